/** The question that a check asks. A test holds that every check has one. */
export const QUESTIONS: Readonly<Record<string, string>> = {
  'record-presence': 'Is there an approved permit on file?',
  'record-clarity': 'Is the file clear and consistent?',
  'inspection-completeness': 'Did the inspection cover what is required?',
  'required-device': 'Is a baffle that every tank needs there?',
  'failure-signs': 'Is the system free of signs of failure?',
  equipment: 'Do the pump, the blower and the alarm work?',
  'capacity-against-record': 'Does the tank hold what the record says?',
  'capacity-against-code': 'Is the tank as large as the code requires?',
  'absorption-against-code': 'Is the absorption area as large as the code requires?',
  bedrooms: 'Does the house have more bedrooms than the system was designed for?',
  'component-presence': 'Is what the record shows in the ground?',
  'component-on-record': 'Is what was found on record?',
  'line-material': 'Is the line the one on record?',
  material: 'Is it made of what the record says?',
  'type-of-component': 'Is it the type the record says?',
  position: 'Is it where the ties put it?',
  setback: 'Is it far enough from the well?',
  level: 'Is the liquid where it should be?',
  solids: 'Do scum and sludge call for pumping?',
  condition: 'Is it sound?',
  lid: 'Is the cover secured (locked, bolted or child-resistant)?',
  'metal-tank-age': 'Is the metal tank within the age the rule allows?',
  'findings-age': 'Does the inspection still describe what is there?',
}

export const questionWords = (check: string): string => QUESTIONS[check] ?? check
