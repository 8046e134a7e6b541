import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { must } from '../src/base/result.ts'
import { readSettings } from '../src/config.ts'

describe('settings', () => {
  test('have a default each, so that none has to be given', () => {
    expect(must(readSettings({}))).toMatchObject({
      HOST: '127.0.0.1',
      PORT: 8080,
      DATABASE_URL: undefined,
      ASFOUND_DATA: path.resolve('.data'),
      LOG_LEVEL: 'info',
      JOBS: true,
      ANSWERS: 'fast',
    })
  })

  test('come as what they are', () => {
    const given = {
      PORT: '0',
      JOBS: 'off',
      TRUST_PROXY: '10.0.0.7, 2001:db8::/32',
      DATABASE_URL: 'postgresql://u@localhost/d?host=%2Frun',
    }
    expect(must(readSettings(given))).toMatchObject({
      PORT: 0,
      JOBS: false,
      TRUST_PROXY: ['10.0.0.7', '2001:db8::/32'],
      DATABASE_URL: given.DATABASE_URL,
    })
  })

  test('secrets come from files too, one way and not both, and no fault tells what is in one', () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'asfound-secret-'))
    const file = path.join(folder, 'url')
    writeFileSync(file, 'postgresql://u:pa55word@db/x\n')
    expect(must(readSettings({ DATABASE_URL_FILE: file })).DATABASE_URL).toBe('postgresql://u:pa55word@db/x')
    const both = readSettings({ DATABASE_URL_FILE: file, DATABASE_URL: 'postgresql://u@db/x' })
    expect(both).toEqual({
      ok: false,
      error: ['DATABASE_URL and DATABASE_URL_FILE are both set: set only one'],
    })
    expect(readSettings({ METRICS_TOKEN_FILE: path.join(folder, 'none') })).toEqual({
      ok: false,
      error: ['METRICS_TOKEN_FILE names a file that is empty or cannot be read'],
    })
    writeFileSync(file, 'mysql://u:pa55word@db/x')
    expect(JSON.stringify(readSettings({ DATABASE_URL_FILE: file }))).not.toContain('pa55word')
    rmSync(folder, { recursive: true })
  })

  test('an empty one counts as not given', () => {
    expect(must(readSettings({ PORT: '', DATABASE_URL: '' }))).toMatchObject({
      PORT: 8080,
      DATABASE_URL: undefined,
    })
  })

  test('all faults are told at once, each by name, and no value is repeated', () => {
    const read = readSettings({
      PORT: '80a',
      DATABASE_CONNECTIONS: '1',
      DATABASE_URL: 'mysql://user:pa55word@db/x',
      LOG_LEVEL: 'loud',
      MIGRATE: 'yes',
      METRICS_TOKEN: 'short-secret',
    })
    expect(read).toEqual({
      ok: false,
      error: [
        'PORT is not a whole number',
        'DATABASE_URL must begin with postgresql://',
        'DATABASE_CONNECTIONS must be from 2 to 500',
        'LOG_LEVEL must be one of: fatal, error, warn, info, debug, trace, silent',
        'MIGRATE must be one of: on, off',
        'METRICS_TOKEN must have at least 16 characters',
      ],
    })
    expect(JSON.stringify(read)).not.toMatch(/pa55word|short-secret/)
  })
})
