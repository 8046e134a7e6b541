/** How papers of the trade write materials and kinds (common practice). */
export const MATERIAL_WORDS: Record<string, string> = {
  concrete: 'precast concrete',
  'concrete-block': 'concrete block',
  steel: 'steel',
  fiberglass: 'fiberglass',
  polyethylene: 'polyethylene',
  'cast-iron': 'cast iron',
  'vitrified-clay': 'vitrified clay',
  pvc: 'PVC SCH 40',
}

export const KIND_WORDS: Record<string, string> = {
  new: 'New installation',
  repair: 'Repair',
  alteration: 'Alteration',
  abandonment: 'Abandonment',
}

export const NUMBER_WORDS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
]
