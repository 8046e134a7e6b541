import type { Copy } from '../../../words/copy.ts'

export const SIGN_IN = {
  title: { en: 'Sign in', es: 'Iniciar sesión' },
  lead: {
    en: 'Compare what the county’s records say was built with what inspectors found in the ground.',
    es: 'Compare lo que dice el registro del condado con lo que se encontró en el terreno.',
  },
  name: { en: 'Email or sign-in name', es: 'Correo electrónico o usuario' },
  password: { en: 'Password', es: 'Contraseña' },
  submit: { en: 'Sign in', es: 'Iniciar sesión' },
  withProvider: {
    en: (title: string) => `Sign in with ${title}`,
    es: (title: string) => `Iniciar sesión con ${title}`,
  },
  help: {
    en: 'Your county or your office creates your account. Forgot your password? Ask the person who invited you.',
    es: 'El condado o su oficina crea su cuenta. ¿Olvidó su contraseña? Pregunte a la persona que le invitó.',
  },
  wrong: {
    en: 'The name or the password is wrong.',
    es: 'El usuario o la contraseña no son correctos.',
  },
} satisfies Copy

export const CODE = {
  title: { en: 'Enter your code', es: 'Escriba su código' },
  lead: {
    en: 'Enter the six-digit code from your authenticator app. No phone? Use one of your recovery codes.',
    es: 'Escriba el código de seis cifras de su aplicación. ¿Sin teléfono? Use un código de recuperación.',
  },
  code: { en: 'Code', es: 'Código' },
  submit: { en: 'Continue', es: 'Continuar' },
  other: { en: 'Sign in as someone else', es: 'Iniciar sesión con otra cuenta' },
  wrong: {
    en: 'That code is wrong, too old or already used.',
    es: 'Ese código no es correcto, ya venció o ya se usó.',
  },
} satisfies Copy
