/** What a row that belongs to a system keeps: nothing where it is the parcel's own. */
export const ofSystem = ({ system, parcel }: { readonly system: string; readonly parcel: string }) =>
  system === parcel ? null : system
