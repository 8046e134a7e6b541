import type { Condition, LineDefect, LineStart } from '../../catalog/choices.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import type { OpenPart } from '../../reconcile/detail.ts'
import type { Device } from '../../reconcile/devices.ts'
import type { KeptFrom } from '../../reconcile/kept-from.ts'
import type { Sign } from '../../reconcile/reason.ts'
import type { OpenItem } from '../../reconcile/status.ts'
import type { OurText } from '../../records/whose.ts'
import type { Step } from '../../rules/values/protocol.ts'
import type { Existing } from '../../rules/values/requirement.ts'
import { ours, oursCapital } from '../ours.ts'

type Gender = 'm' | 'f'
type Noun = { readonly noun: OurText; readonly is: Gender }

const m = (noun: OurText): Noun => ({ noun, is: 'm' })
const f = (noun: OurText): Noun => ({ noun, is: 'f' })

export const NOUNS: { readonly [K in ComponentKind | 'system']: Noun } = {
  system: m(ours`sistema séptico`),
  tank: m(ours`tanque séptico`),
  'pump-chamber': f(ours`cámara de bombeo`),
  'treatment-unit': f(ours`planta de tratamiento aeróbico`),
  'holding-tank': m(ours`tanque de retención`),
  'grease-interceptor': f(ours`trampa de grasa`),
  'media-filter': m(ours`filtro de arena`),
  'disinfection-unit': m(ours`equipo de desinfección`),
  'laundry-system': m(ours`pozo de agua de lavado`),
  privy: f(ours`letrina`),
  'straight-pipe': m(ours`tubo directo`),
  cesspool: m(ours`pozo negro`),
  'distribution-box': f(ours`caja de distribución`),
  'building-sewer': f(ours`tubería de la casa`),
  'effluent-line': f(ours`tubería al campo de drenaje`),
  'seepage-pit': m(ours`pozo de absorción`),
  trench: f(ours`zanja del campo de drenaje`),
  bed: m(ours`lecho del campo de drenaje`),
  chambers: f(ours`cámara del campo de drenaje`),
  mound: m(ours`montículo de drenaje`),
  'drip-field': m(ours`campo de goteo`),
  'inlet-baffle': m(ours`deflector de entrada del tanque`),
  'outlet-baffle': m(ours`deflector de salida del tanque`),
  'effluent-filter': m(ours`filtro de salida del tanque`),
  'access-opening': f(ours`abertura del tanque`),
  riser: m(ours`tubo de acceso del tanque`),
  'observation-port': m(ours`tubo de observación`),
  well: m(ours`pozo de agua`),
}

const of = ({ kind }: OpenPart): Noun => NOUNS[kind]
export const name = (part: OpenPart): OurText =>
  part.mark === null ? of(part).noun : ours`${of(part).noun} ${part.mark}`
export const the = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`el ${name(part)}` : ours`la ${name(part)}`
export const The = (part: OpenPart): OurText => oursCapital(the(part))
export const ofThe = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`del ${name(part)}` : ours`de la ${name(part)}`
export const a = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`un ${of(part).noun}` : ours`una ${of(part).noun}`
/** One of two endings, by the gender of the part. */
export const by = (part: OpenPart, masculine: OurText, feminine: OurText): OurText =>
  of(part).is === 'm' ? masculine : feminine

export const CONDITIONS: { readonly [C in Condition]: readonly [OurText, OurText] } = {
  sound: [ours`en buen estado`, ours`en buen estado`],
  worn: [ours`gastado`, ours`gastada`],
  cracked: [ours`agrietado`, ours`agrietada`],
  corroded: [ours`corroído`, ours`corroída`],
  leaking: [ours`con fugas`, ours`con fugas`],
  broken: [ours`roto`, ours`rota`],
  collapsed: [ours`derrumbado`, ours`derrumbada`],
  blocked: [ours`tapado`, ours`tapada`],
}

export const DEFECTS: { readonly [D in LineDefect]: OurText } = {
  crack: ours`una grieta`,
  break: ours`una rotura`,
  collapse: ours`un derrumbe`,
  deformation: ours`un tubo aplastado`,
  'offset-joint': ours`una junta fuera de línea`,
  'open-joint': ours`una junta abierta`,
  'root-intrusion': ours`raíces`,
  sag: ours`un tramo hundido con agua`,
  corrosion: ours`óxido`,
  blockage: ours`algo que tapa el paso`,
  leak: ours`una fuga`,
}

const STARTS: { readonly [S in LineStart]: OurText } = {
  'house-wall': ours`la pared de la casa`,
  cleanout: ours`el registro de limpieza`,
  tank: ours`el tanque`,
  'pump-chamber': ours`la cámara de bombeo`,
  'distribution-box': ours`la caja de distribución`,
  'far-end': ours`su otro extremo`,
}

export function along({ from, to, start }: NonNullable<OpenItem['detail']['stretch']>): OurText {
  const since = start === null ? ours`a lo largo de la tubería` : ours`desde ${STARTS[start]}`
  const [a, b] = [Math.round(from), to === null ? null : Math.round(to)]
  return b === null ? ours`a ${a} pies ${since}` : ours`de ${a} a ${b} pies ${since}`
}

export const required = ({ detail: { source } }: OpenItem): OurText =>
  source === 'from-memory' ? ours`tal vez exigía` : ours`exigía`

export const SIGNS: { readonly [S in Sign]: OurText } = {
  backup: ours`Las aguas negras regresaron a la casa.`,
  'pipe-to-open': ours`Un tubo saca las aguas negras al aire libre. No hay tanque ni campo de drenaje.`,
  discharge: ours`Las aguas negras salen al suelo, a una zanja o al agua.`,
  surfacing: ours`Hay aguas negras sobre el suelo. Pueden enfermar a la gente.`,
  dye: ours`El tinte puesto en la casa salió al suelo o al agua.`,
  'run-back': ours`Al vaciar el tanque, el agua regresó. El campo de drenaje está lleno.`,
  'wet-ground': ours`El suelo sobre el campo de drenaje está mojado.`,
  'lush-ground': ours`El pasto sobre el campo de drenaje está demasiado verde.`,
}

export const BUILT: { readonly [B in NonNullable<OpenItem['detail']['built']>]: OurText } = {
  'liquid-depth': ours`La profundidad del líquido en el tanque`,
  freeboard: ours`El espacio de aire sobre el líquido`,
  wall: ours`La pared del tanque`,
  'invert-drop': ours`La caída de la entrada a la salida`,
  'inlet-below': ours`La profundidad del deflector de entrada`,
  'outlet-below': ours`La profundidad del deflector de salida`,
  'outlet-share': ours`La profundidad del deflector de salida`,
  'outlet-above': ours`La altura del deflector de salida`,
  compartments: ours`El número de compartimientos del tanque`,
  cesspool: ours`El pozo negro`,
  privy: ours`La letrina`,
  'masonry-tank': ours`El tanque`,
}

export const EXISTING: { readonly [E in Existing]: OurText } = {
  'until-it-fails': ours`Este puede quedar hasta que falle.`,
  'replace-at-transfer': ours`Este se debe cambiar cuando se venda la propiedad.`,
  hazard: ours`La norma lo llama un peligro.`,
}

export const BURDENS: { readonly [B in NonNullable<OpenItem['detail']['burden']>]: OurText } = {
  vehicles: ours`Carros o camiones pasan o se estacionan sobre el sistema.`,
  building: ours`Hay algo hecho sobre el campo de drenaje.`,
  roots: ours`Hay raíces de árboles en el campo de drenaje.`,
  'surface-water': ours`El agua del techo o del suelo corre al campo de drenaje.`,
  disposer: ours`El tanque es muy chico para una casa con triturador de comida.`,
  'clear-water': ours`El agua de lluvia o del suelo entra al sistema por un tubo o una bomba.`,
  'water-use': ours`La casa usa más agua de la que el sistema puede recibir.`,
}

/** De qué se guarda distancia: `cerca del pozo`. */
const CLOSE: { readonly [K in KeptFrom]: OurText } = {
  well: ours`del pozo de agua`,
  'public-well': ours`del pozo público`,
  spring: ours`del manantial`,
  building: ours`de la casa`,
  'property-line': ours`del límite del terreno`,
  'surface-water': ours`de un lago o río`,
  stream: ours`de un arroyo o una zanja`,
  wetland: ours`de un humedal`,
  'water-line': ours`de la tubería de agua`,
  'suction-line': ours`de la tubería de la bomba`,
  pool: ours`de la alberca`,
  drain: ours`de un dren en el suelo`,
  cut: ours`de un corte del terreno`,
  'other-system': ours`del sistema de un vecino`,
}

/** A qué se mide: `la distancia a la casa`. */
export const AWAY: { readonly [K in KeptFrom]: OurText } = {
  well: ours`al pozo de agua`,
  'public-well': ours`al pozo público`,
  spring: ours`al manantial`,
  building: ours`a la casa`,
  'property-line': ours`al límite del terreno`,
  'surface-water': ours`a un lago o río`,
  stream: ours`a un arroyo o una zanja`,
  wetland: ours`a un humedal`,
  'water-line': ours`a la tubería de agua`,
  'suction-line': ours`a la tubería de la bomba`,
  pool: ours`a la alberca`,
  drain: ours`a un dren en el suelo`,
  cut: ours`a un corte del terreno`,
  'other-system': ours`al sistema de un vecino`,
}

export const near = ({ detail: { nearTo } }: OpenItem): OurText => CLOSE[nearTo ?? 'well']

export const FAILED: { readonly [D in Device]: (part: OpenPart) => OurText } = {
  pump: (part) => ours`La bomba o el soplador ${ofThe(part)} no funciona.`,
  alarm: (part) => ours`La alarma ${ofThe(part)} no funciona.`,
  floats: (part) => ours`Los flotadores ${ofThe(part)} no mueven la bomba.`,
  timer: (part) => ours`El reloj ${ofThe(part)} no funciona.`,
  wiring: (part) => ours`Hay cables sin tapar en ${the(part)}. Pueden matar.`,
  disinfection: (part) => ours`${The(part)} no limpia el agua como debe.`,
}

/** Lo que la inspección dejó fuera. */
export function leftOut(part: OpenPart, step: Step): OurText {
  switch (step) {
    case 'locate':
      return ours`El inspector no localizó ${the(part)}.`
    case 'open':
      return ours`No se quitó la tapa ${ofThe(part)}.`
    case 'read-level':
      return ours`No se midió el nivel del líquido ${ofThe(part)}.`
    case 'see-outlet-device':
      return ours`No se miró el deflector de salida.`
    case 'check-cover':
      return ours`No se revisó la tapa ${ofThe(part)}.`
    case 'test-pump':
      return ours`No se probó la bomba o el soplador ${ofThe(part)}.`
    case 'test-alarm':
      return ours`No se probó la alarma ${ofThe(part)}.`
    case 'test-floats':
      return ours`No se probaron los flotadores ${ofThe(part)}.`
    case 'check-wiring':
      return ours`No se miraron los cables ${ofThe(part)}.`
    case 'test-disinfection':
      return ours`No se probó ${the(part)}.`
    case 'ask-contract':
      return ours`Nadie preguntó quién cuida ${the(part)}.`
    case 'walk-ground':
      return ours`No se recorrió el suelo sobre el campo de drenaje.`
    case 'count-bedrooms':
      return ours`No se contaron los dormitorios.`
    case 'ask-occupancy':
      return ours`Nadie preguntó quién vive allí.`
    case 'ask-pumping':
      return ours`Nadie preguntó cuándo se vació el tanque.`
    case 'ask-backup':
      return ours`Nadie preguntó si subieron aguas negras en la casa.`
    case 'locate-outflow':
      return ours`No se encontró adónde va el agua del tanque.`
    case 'run-water':
      return ours`La casa estuvo vacía y no se hizo correr agua para probar el sistema.`
  }
}
