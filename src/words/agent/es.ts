import type { OpenPart } from '../../reconcile/detail.ts'
import type { Sign } from '../../reconcile/reason.ts'
import type { OpenItem } from '../../reconcile/status.ts'
import type { ComponentKind } from '../../records/component.ts'
import type { Condition } from '../../records/findings.ts'
import type { OurText } from '../../records/whose.ts'
import type { Step } from '../../rules/values/protocol.ts'
import type { Existing } from '../../rules/values/requirement.ts'
import { ours, oursCapital } from '../ours.ts'
import type { AgentVoice } from './voice.ts'

type Gender = 'm' | 'f'
type Noun = { readonly noun: OurText; readonly is: Gender }

const m = (noun: OurText): Noun => ({ noun, is: 'm' })
const f = (noun: OurText): Noun => ({ noun, is: 'f' })

const NOUNS: { readonly [K in ComponentKind | 'system']: Noun } = {
  system: m(ours`sistema séptico`),
  tank: m(ours`tanque séptico`),
  'pump-chamber': f(ours`cámara de bombeo`),
  'treatment-unit': f(ours`planta de tratamiento aeróbico`),
  'holding-tank': m(ours`tanque de retención`),
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
const name = (part: OpenPart): OurText =>
  part.mark === null ? of(part).noun : ours`${of(part).noun} ${part.mark}`
const the = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`el ${name(part)}` : ours`la ${name(part)}`
const The = (part: OpenPart): OurText => oursCapital(the(part))
const ofThe = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`del ${name(part)}` : ours`de la ${name(part)}`
const a = (part: OpenPart): OurText =>
  of(part).is === 'm' ? ours`un ${of(part).noun}` : ours`una ${of(part).noun}`
/** One of two endings, by the gender of the part. */
const by = (part: OpenPart, masculine: OurText, feminine: OurText): OurText =>
  of(part).is === 'm' ? masculine : feminine

const CONDITIONS: { readonly [C in Condition]: readonly [OurText, OurText] } = {
  sound: [ours`en buen estado`, ours`en buen estado`],
  worn: [ours`gastado`, ours`gastada`],
  cracked: [ours`agrietado`, ours`agrietada`],
  corroded: [ours`corroído`, ours`corroída`],
  leaking: [ours`con fugas`, ours`con fugas`],
  broken: [ours`roto`, ours`rota`],
  collapsed: [ours`derrumbado`, ours`derrumbada`],
  blocked: [ours`tapado`, ours`tapada`],
}

const required = ({ detail: { source } }: OpenItem): OurText =>
  source === 'from-memory' ? ours`tal vez exigía` : ours`exigía`

const SIGNS: { readonly [S in Sign]: OurText } = {
  backup: ours`Las aguas negras regresaron a la casa.`,
  discharge: ours`Las aguas negras salen al suelo, a una zanja o al agua.`,
  surfacing: ours`Hay aguas negras sobre el suelo. Pueden enfermar a la gente.`,
  dye: ours`El tinte puesto en la casa salió al suelo o al agua.`,
  'run-back': ours`Al vaciar el tanque, el agua regresó. El campo de drenaje está lleno.`,
  'wet-ground': ours`El suelo sobre el campo de drenaje está mojado.`,
  'lush-ground': ours`El pasto sobre el campo de drenaje está demasiado verde.`,
}

const BUILT: { readonly [B in NonNullable<OpenItem['detail']['built']>]: OurText } = {
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
  'masonry-tank': ours`El tanque`,
}

const EXISTING: { readonly [E in Existing]: OurText } = {
  'until-it-fails': ours`Este puede quedar hasta que falle.`,
  'replace-at-transfer': ours`Este se debe cambiar cuando se venda la propiedad.`,
  hazard: ours`La norma lo llama un peligro.`,
}

/** Lo que la inspección dejó fuera. */
function leftOut(part: OpenPart, step: Step): OurText {
  switch (step) {
    case 'locate':
      return ours`El inspector no buscó ${the(part)}.`
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
  }
}

export { leftOut as leftOutEs }

const NOW = ours`El dueño no tiene que hacer nada por ahora.`

export const ES: AgentVoice = {
  word: {
    'action-needed': ours`Hay que actuar`,
    'no-record': ours`Sin registro`,
    'not-inspected': ours`Sin inspección`,
    'out-of-date': ours`Inspección vencida`,
    incomplete: ours`Inspección incompleta`,
    'under-review': ours`En revisión`,
    resolved: ours`Resuelto`,
    matches: ours`Coincide con el registro`,
  },
  sentence: {
    'action-needed': ours`Hay que arreglar el sistema séptico o hacer otra cosa con él.`,
    'no-record': ours`El condado no tiene un registro aprobado de un sistema séptico en esta parcela.`,
    'not-inspected': ours`Aún no se ha comparado ninguna inspección con el registro del condado.`,
    'out-of-date': ours`La última inspección es muy vieja. Hace falta una nueva.`,
    incomplete: ours`La última inspección dejó fuera algo que debe mirar.`,
    'under-review': ours`El condado revisa dudas que hay sobre el sistema séptico.`,
    resolved: ours`El condado revisó y resolvió cada diferencia. No hay que hacer nada.`,
    matches: ours`La última inspección coincide con el registro del condado.`,
  },
  state: {
    'owner-must-act': ours`El dueño debe actuar`,
    'inspector-must-measure': ours`Un inspector debe volver`,
    'county-reviewing': ours`El condado lo revisa`,
  },
  part: (part) =>
    part.onRecord ? oursCapital(name(part)) : oursCapital(ours`${a(part)} que no está en el registro`),
  says: {
    'capacity-below-record': ({ part }) =>
      ours`${The(part)} es más ${by(part, ours`pequeño`, ours`pequeña`)} de lo que dice el registro.`,
    'capacity-above-record': ({ part }) => ours`${The(part)} es más grande de lo que dice el registro.`,
    'capacity-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`El tanque es más pequeño de lo que hoy se exige a uno nuevo. ${NOW}`
        : ours`El tanque es más pequeño de lo que ${required(item)} la norma cuando se autorizó.`,
    'construction-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`${BUILT[item.detail.built ?? 'freeboard']} no cumple lo que hoy se exige a uno nuevo. ${NOW}`
        : ours`${BUILT[item.detail.built ?? 'freeboard']} no cumple lo que ${required(item)} la norma cuando se autorizó.`,
    'type-not-accepted': ({ part, detail: { occasion, existing } }) =>
      occasion === 'today'
        ? ours`Hoy no se permite ${a(part)} así. ${EXISTING[existing ?? 'until-it-fails']}`
        : ours`${The(part)} no se permitía cuando se autorizó.`,
    'component-missing': ({ part, detail: { requiredBy, occasion } }) =>
      requiredBy === 'rule'
        ? occasion === 'today'
          ? ours`El tanque no tiene filtro de salida. Hoy uno nuevo debe tenerlo. ${NOW}`
          : ours`El tanque no tiene filtro de salida. La norma lo exigía cuando se autorizó.`
        : part.onRecord
          ? ours`${The(part)} está en el registro. El inspector ${by(part, ours`lo`, ours`la`)} buscó y no ${by(part, ours`lo`, ours`la`)} encontró.`
          : ours`El inspector buscó ${the(part)} y no ${by(part, ours`lo`, ours`la`)} encontró. Todo tanque séptico necesita uno.`,
    'component-not-on-record': ({ part }) =>
      ours`El inspector encontró ${a(part)}. El condado no ${by(part, ours`lo`, ours`la`)} tiene en su registro.`,
    'line-replaced': ({ part }) => ours`${The(part)} se cambió con permiso.`,
    'line-replaced-without-permit': ({ part }) =>
      ours`${The(part)} se cambió. El condado no tiene permiso de esa obra.`,
    'material-differs': ({ part }) => ours`${The(part)} es de otro material que el del registro.`,
    'type-differs': ({ part }) => ours`${The(part)} no es del tipo que muestra el registro.`,
    'position-differs': ({ part }) => ours`${The(part)} no está donde dice el registro.`,
    'setback-short': (item) =>
      item.detail.source === 'from-memory'
        ? ours`${The(item.part)} queda más cerca del pozo de lo que tal vez permite la norma.`
        : ours`${The(item.part)} queda más cerca del pozo de lo que permite la norma.`,
    'lender-distance-short': ({ part }) =>
      ours`${The(part)} queda más cerca del pozo de lo que permiten algunos prestamistas.`,
    'bedrooms-above-design': () =>
      ours`La casa tiene más dormitorios de los previstos para su sistema séptico.`,
    'absorption-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`El campo de drenaje es menor de lo que hoy se exige a uno nuevo. ${NOW}`
        : ours`El campo de drenaje es menor de lo que ${required(item)} la norma cuando se autorizó.`,
    'level-high': ({ part }) =>
      ours`El nivel del líquido ${ofThe(part)} es muy alto. El agua no sale como debe.`,
    'level-low': ({ part, detail }) =>
      detail.readAgain
        ? ours`El nivel del líquido ${ofThe(part)} es bajo. Puede haber fugas, o la casa estuvo vacía.`
        : ours`El nivel del líquido ${ofThe(part)} es muy bajo. Tiene fugas.`,
    'solids-high': ({ part }) => ours`Ya toca vaciar ${the(part)}.`,
    'condition-poor': ({ part, detail: { condition } }) => {
      switch (condition) {
        case 'cover':
          return ours`La tapa ${ofThe(part)} no está asegurada. Mantenga lejos a los niños.`
        case 'age':
          return ours`${The(part)} es de acero. Ya pasó los años que la norma espera que dure.`
        case null:
          return ours`${The(part)} está en mal estado.`
        default:
          return ours`${The(part)} está ${by(part, ...CONDITIONS[condition])}.`
      }
    },
    'failure-sign': ({ detail: { sign } }) =>
      sign === null ? ours`El sistema muestra señales de falla.` : SIGNS[sign],
    'equipment-failed': ({ part, detail: { device } }) =>
      device === 'alarm'
        ? ours`La alarma ${ofThe(part)} no funciona.`
        : ours`La bomba o el soplador ${ofThe(part)} no funciona.`,
    'inspection-incomplete': ({ part, detail: { step } }) =>
      step === null ? ours`La inspección no está completa.` : leftOut(part, step),
    'record-absent': () => ours`El condado no tiene registro de un sistema séptico en esta parcela.`,
    'record-unclear': ({ detail: { neverApproved } }) =>
      neverApproved
        ? ours`Un permiso de esta parcela nunca se aprobó. No muestra que se construyera un sistema.`
        : ours`Los permisos del condado para esta parcela no concuerdan o no se pueden leer.`,
    'measurement-unclear': ({ detail: { occasion, against } }) =>
      occasion === 'today'
        ? ours`No se puede saber si el tanque es tan grande como hoy se exige a uno nuevo. ${NOW}`
        : against === 'code'
          ? ours`No se puede saber si el tanque era tan grande como exigía la norma.`
          : ours`No se puede saber si el tanque es del tamaño registrado.`,
    'findings-stale': ({ detail: { workSince } }) =>
      workSince
        ? ours`Se aprobó una obra después de la última inspección. Ya no describe el sistema.`
        : ours`La última inspección es muy vieja para contar en una venta.`,
  },
  act: {
    'correct-permit-or-accept': () => ours`El condado decidirá si el tanque puede quedar.`,
    'find-replacement-or-correct': () => ours`El condado buscará un permiso o corregirá su registro.`,
    'decide-whether-it-may-stay': () => ours`El condado decidirá si puede quedar.`,
    'decide-on-bedrooms': () => ours`El condado decidirá si hay que ampliar el sistema.`,
    'decide-on-repair': (part) => ours`El condado decidirá si hay que reparar ${the(part)}.`,
    'decide-on-metal-tank': () => ours`El condado decidirá si hay que probar o cambiar el tanque.`,
    'correct-or-search-again': () => ours`El condado corregirá su registro o pedirá que se busque otra vez.`,
    'find-paper-or-require-permit': () => ours`El condado buscará el permiso o exigirá uno.`,
    'find-permit-or-require-one': () => ours`El condado buscará el permiso o exigirá uno.`,
    'correct-ties': () => ours`El condado va a revisar su registro.`,
    'search-old-numbers': () => ours`El condado buscará en sus archivos viejos.`,
    'find-approval': () => ours`El condado buscará si se aprobó o pedirá una inspección.`,
    'settle-the-papers': () => ours`El condado va a revisar sus permisos y a corregir el registro.`,
    remeasure: () => ours`Un inspector debe tomar otra vez una medida.`,
    'inspect-again': () => ours`Pida que un inspector con licencia vuelva a inspeccionar el sistema.`,
    'finish-inspection': () => ours`Un inspector debe terminar la inspección.`,
    'refill-and-read': () => ours`Llene el tanque con agua. Un inspector debe medir el nivel otra vez.`,
    'stop-discharge': () =>
      ours`Detenga la descarga. Aleje a personas y animales. Haga reparar el sistema con permiso.`,
    'stop-use-and-fix': () =>
      ours`Use la menor agua posible. Pida que un instalador con licencia revise el sistema de inmediato.`,
    'repair-equipment': () => ours`Pida que un electricista o técnico con licencia lo repare.`,
    'check-drainfield': () => ours`El condado decidirá si hay que probar el campo de drenaje.`,
    'install-or-accept-part': () => ours`El condado decidirá si hay que poner uno.`,
    'replace-at-transfer': (part) => ours`Cambie ${the(part)} con permiso cuando se venda la propiedad.`,
    'replace-system': (part) => ours`Deje de usar ${the(part)}. Cámbielo con permiso.`,
    'replace-part': (part) => ours`Pida que un instalador con licencia cambie ${the(part)}.`,
    'repair-or-replace': (part) => ours`Pida que un instalador con licencia repare o cambie ${the(part)}.`,
    'secure-cover': () => ours`Haga asegurar la tapa de inmediato.`,
    'fix-flow': () =>
      ours`Pida que un instalador con licencia averigüe por qué no drena. Hay que arreglarlo.`,
    'test-for-leaks': () => ours`Haga probar si el tanque tiene fugas. Repárelo o cámbielo con permiso.`,
    pump: () => ours`Pida que una empresa con licencia vacíe el tanque.`,
    'test-water': () => ours`Haga analizar el agua del pozo. El condado decidirá sobre la distancia.`,
    'lender-decides': () => ours`Pregunte al prestamista. Aquí la norma no exige nada.`,
    'nothing-until-change': () => NOW,
    'pump-advised': () => ours`Es bueno vaciarlo. Nadie tiene que hacerlo.`,
    nothing: () => ours`No hace falta nada.`,
  },
  decided: {
    'correct-record': ours`El condado corrigió su registro.`,
    accept: ours`El condado lo revisó y lo aceptó.`,
    'require-permit': ours`El condado exige un permiso para la obra hecha.`,
    'require-repair': ours`El condado exige arreglar el sistema y revisarlo otra vez. Debe hacerlo gente con licencia.`,
    'ask-remeasurement': ours`El condado pidió a la empresa que mida otra vez.`,
  },
}
