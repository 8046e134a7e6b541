/** A caution for a person about to open the ground, with its source or, where there is none, 'common practice'. */
export type Caution = {
  readonly about: 'entry' | 'gas' | 'covers' | 'collapse' | 'digging' | 'power' | 'disease' | 'holes'
  readonly says: string
  readonly source: string
}

export const CAUTIONS: readonly Caution[] = [
  {
    about: 'entry',
    says: 'Never enter a tank, chamber or pit, and never lean in. It is a confined space: air that looks clear can kill.',
    source: '29 CFR 1910.146 (permit-required confined spaces)',
  },
  {
    about: 'gas',
    says: 'Hydrogen sulfide dulls the sense of smell, and methane burns and explodes: no flame, no smoking, stay upwind. If someone goes down, call for help and stay out.',
    source: 'a town code of Illinois, Nashville; common practice',
  },
  {
    about: 'covers',
    says: 'An open or weak cover can drown a child or an adult. Never leave an opening unattended, and secure every cover before you leave.',
    source: 'ASTM C1227 (covers of 59 lb or locked, as reported in work item WK74020)',
  },
  {
    about: 'collapse',
    says: 'Old steel and block tanks and the covers of pits collapse under a person. Probe from the side and keep off the top.',
    source: 'common practice',
  },
  {
    about: 'digging',
    says: 'Call 811 before you dig, days ahead. Private lines (sewer, septic, wiring to outbuildings, pump cables) are not marked: find them yourself.',
    source: 'state one-call laws; that private lines are not marked is from memory',
  },
  {
    about: 'power',
    says: 'Pump chambers hold live electricity beside water: switch the circuit off and lock it, and leave wiring to a licensed electrician.',
    source: 'common practice',
  },
  {
    about: 'disease',
    says: 'Sewage carries disease: gloves, eye protection, cover cuts, wash before you eat or get into the truck.',
    source: 'common practice',
  },
  {
    about: 'holes',
    says: 'Shore or slope any hole deeper than you are willing to be buried in; soil over a tank has been dug before and falls in.',
    source: 'common practice',
  },
]

export const DEFERENCE =
  'Local codes and licensed practice govern what may be opened, by whom and how. Nothing here is a legal finding, and nothing here warrants the system.'
