declare const brand: unique symbol

/** A primitive that has been checked: the type says what the check established. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name }
