/** What pdfjs says, and only says, when it drops a picture of more points than it was allowed. */
const DROPPED = /Image exceeded maximum allowed size/
let dropped = 0

/**
 * Listens to what pdfjs says aloud, for it tells of a dropped picture in no other way. Nobody else hears it: this
 * process has no one to talk to but its parent.
 */
export function listenForDropped(): void {
  console.warn = (said: unknown): void => {
    if (DROPPED.test(String(said))) dropped += 1
  }
}

/** Whether a picture was dropped since this was last asked. */
export function pictureWasDropped(): boolean {
  const some = dropped > 0
  dropped = 0
  return some
}
