/** What a check is about in the short words of a status letter: when it came out well, and when it was left open. */
export type Topic = { readonly agrees: string; readonly open: string }

const topic = (agrees: string, open: string): Topic => ({ agrees, open })

/** By check; where a check asks twice, by check and facet. A test holds that every check has its words. */
export const TOPICS: Readonly<Record<string, Topic>> = {
  'record-presence': topic('An approved permit is on file', 'whether a permit is on file'),
  'record-clarity': topic('The file speaks with one voice', 'what the file says'),
  'capacity-against-record': topic('Capacity as recorded', 'capacity against the record'),
  'capacity-against-code': topic('Tank capacity as the code asks', 'capacity against the code'),
  'capacity-against-code | when permitted': topic(
    'Tank capacity as the code asked when permitted',
    'capacity against the code of its day',
  ),
  'capacity-against-code | today': topic(
    'Tank capacity as the code asks today',
    'capacity against the code of today',
  ),
  'absorption-against-code': topic('Absorption area as the code asks', 'absorption area against the code'),
  'absorption-against-code | when permitted': topic(
    'Absorption area as the code asked when permitted',
    'absorption area against the code of its day',
  ),
  'absorption-against-code | today': topic(
    'Absorption area as the code asks today',
    'absorption area against the code of today',
  ),
  bedrooms: topic('No more bedrooms than it was designed for', 'bedrooms against the design'),
  'component-presence': topic('Found in the ground', 'whether it is there'),
  'component-on-record': topic('On record', 'whether it is on record'),
  'line-material': topic('Pipe as recorded', 'pipe against the record'),
  material: topic('Material as recorded', 'material'),
  'type-of-component': topic('Kind as recorded', 'kind'),
  position: topic('Where the record puts it', 'place against the record'),
  setback: topic('Far enough from the well', 'distance from the well'),
  level: topic('Liquid at the level of the outlet', 'liquid level'),
  solids: topic('Scum and sludge call for no pumping', 'scum and sludge'),
  condition: topic('Sound as seen', 'condition'),
  lid: topic('Cover secured', 'cover'),
  'metal-tank-age': topic('Within the age allowed for metal', 'age of the tank'),
  'findings-age': topic('The inspection still counts', 'whether the inspection still counts'),
}

export const topicOf = (check: string, facet: string | null): Topic | undefined =>
  TOPICS[`${check} | ${facet}`] ?? TOPICS[check]
