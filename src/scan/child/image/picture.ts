/** A picture in gray, a byte a point, rows from the top: 0 is black. */
export type Picture = { readonly data: Uint8Array; readonly width: number; readonly height: number }
