import manifest from '../../../package.json' with { type: 'json' }

/** The version of the program that a reconciliation was made by: the same inputs and the same engine give the same bytes. */
export const ENGINE = `asfound ${manifest.version}`
