/** Which parcel it was that could not be reconciled. */
export class ParcelFault extends Error {
  override readonly name = 'ParcelFault'
  readonly parcel: string

  constructor(parcel: string, cause: unknown) {
    super(cause instanceof Error ? cause.message : 'it could not be reconciled', { cause })
    this.parcel = parcel
  }
}
