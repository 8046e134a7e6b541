/** What there is to do in the background, and what each job is told. A new kind is a line here and a handler. */
export type JobKinds = {
  readonly 'read-document': { readonly document: string }
  readonly 'reconcile-parcel': { readonly parcel: string; readonly occasion: string }
  readonly 'share-rerun': { readonly rerun: string }
  readonly 'run-import': { readonly import: string }
  readonly 'try-rules': { readonly yaml: string }
  readonly 'learn-form': { readonly transcription: string }
  readonly 'propose-again': { readonly form: string }
}

export type JobKind = keyof JobKinds

/** Held to the type above by the compiler; the queue needs the names at run time. */
const names: { readonly [K in JobKind]: K } = {
  'read-document': 'read-document',
  'reconcile-parcel': 'reconcile-parcel',
  'share-rerun': 'share-rerun',
  'run-import': 'run-import',
  'try-rules': 'try-rules',
  'learn-form': 'learn-form',
  'propose-again': 'propose-again',
}

export const JOB_KINDS: readonly JobKind[] = Object.values(names)
