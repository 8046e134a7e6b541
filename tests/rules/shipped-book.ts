import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { faultInWords } from '../../src/rules/parse/fault.ts'

const loaded = await loadRuleBook()
if (!loaded.ok) throw new Error(loaded.error.map(faultInWords).join('\n'))

/** The packs that come with the service, read once for a test file. */
export const SHIPPED = loaded.value
