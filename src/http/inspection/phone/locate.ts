export type PhonePlace = { readonly lat: number; readonly lon: number; readonly radiusFt: number }

/** A meter in feet (the international foot, 0.3048 m). */
const FT_PER_M = 1 / 0.3048

/**
 * Where the phone is, as its receiver says: the radius is the one that 95 % of fixes are said to lie within (W3C
 * Geolocation, 5.3.2). Asks the person, who may refuse; the reason comes back in words.
 */
export const locate = (): Promise<PhonePlace | string> =>
  new Promise((resolve) => {
    if (!('geolocation' in navigator)) return resolve('This phone does not share its location.')
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        resolve({
          lat: Number(latitude.toFixed(7)),
          lon: Number(longitude.toFixed(7)),
          radiusFt: Number(Math.max(accuracy * FT_PER_M, 0.1).toFixed(1)),
        }),
      ({ code }) =>
        resolve(
          code === 1
            ? 'Location is turned off for this site. You can allow it in the site settings.'
            : 'No satellite fix yet. Step out from under trees and try again.',
        ),
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 10_000 },
    )
  })
