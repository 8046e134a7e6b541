import { expect, test } from 'vitest'
import { fieldsPage } from './fields-page.ts'

test('the page of fields says what the catalog says', async () => {
  await expect(fieldsPage()).toMatchFileSnapshot('../../docs/fields.md')
})
