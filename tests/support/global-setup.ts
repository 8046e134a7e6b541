import type { TestProject } from 'vitest/node'
import { chooseServer, type TestServer } from './choose-server.ts'

declare module 'vitest' {
  interface ProvidedContext {
    testServer: TestServer
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { server, says, stop } = await chooseServer(process.env)
  process.stdout.write(`Tests that need a database use ${says}.\n`)
  project.provide('testServer', server)
  return stop
}
