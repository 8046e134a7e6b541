import { describe, expect, test } from 'vitest'
import { passwordFault } from '../../../src/operations/access/password-rules.ts'

const about = ['records.desk@quillback.example', 'front desk', 'Heron Inspections']

describe('a password', () => {
  // OWASP ASVS 5.0, 6.2.5 and 6.2.9: any kinds of characters, blanks and long ones too (from memory).
  test.each([
    'four words of no kinship',
    'a long and quiet river',
    'ΔιΟδος κατω απο το σπιτι',
    '七つの井戸と古い図面があった家の裏',
    `${'wren oak '.repeat(3)}lantern 7 marsh`,
    'x9!Q2-zzW_71.pLmK;0a'.repeat(4),
  ])('is fit: %s', async (password) => expect(await passwordFault(password, about)).toBeNull())

  // 6.2.4, 6.2.11, 6.2.12: breached ones, what is close to them, and what belongs to the account.
  test.each([
    ['short', 'at least 15'],
    ['x'.repeat(129), 'more than 128'],
    ['passwordpassword', 'tried first'],
    ['password123456789', 'tried first'],
    ['P@ssw0rdP@ssw0rd', 'tried first'],
    ['qwertyuiopasdfghjkl', 'tried first'],
    ['123456789012345', 'tried first'],
    ['aaaaaaaaaaaaaaaaaaaa', 'tried first'],
    ['iloveyouiloveyou', 'tried first'],
    ['records.desk records.desk', 'tried first'],
    ['heron inspections 1', 'tried first'],
    ['asfound asfound 1', 'tried first'],
  ])('is not: %s', async (password, says) => expect(await passwordFault(password, about)).toContain(says))

  test('is counted by characters, not by how they are stored', async () => {
    expect(await passwordFault('🦉🦊🐢🌾🪵🧭🕯🪶🦔🐝🦋🍂🌧', about)).toContain('has 13 characters')
  })
})
