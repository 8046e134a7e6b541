import * as z from 'zod'

/** Writing programs while it runs is what the pages' content policy forbids; without this the library tries, once. */
z.config({ jitless: true })
