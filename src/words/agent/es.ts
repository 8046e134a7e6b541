import { ours, oursCapital } from '../ours.ts'
import {
  AWAY,
  a,
  along,
  BUILT,
  BURDENS,
  by,
  CONDITIONS,
  DEFECTS,
  EXISTING,
  FAILED,
  leftOut,
  name,
  near,
  ofThe,
  required,
  SIGNS,
  The,
  the,
} from './es-parts.ts'
import type { AgentVoice } from './voice.ts'

const HERE = { from: 0, to: null, start: null } as const
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
  resolvedByWaiver: ours`El condado revisó cada diferencia. Dispensó una parte de la inspección.`,
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
    'line-replaced-without-permit': ({ part, detail: { stretch } }) =>
      stretch === null
        ? ours`${The(part)} se cambió. El condado no tiene permiso de esa obra.`
        : ours`Se cambió parte ${ofThe(part)}. Está ${along(stretch)}. El condado no tiene permiso de esa obra.`,
    'material-differs': ({ part }) => ours`${The(part)} es de otro material que el del registro.`,
    'type-differs': ({ part }) => ours`${The(part)} no es del tipo que muestra el registro.`,
    'position-differs': ({ part, detail: { nearTo } }) =>
      nearTo === null
        ? ours`${The(part)} no está donde dice el registro.`
        : ours`El registro da otra distancia ${ofThe(part)} ${AWAY[nearTo]}.`,
    'setback-short': (item) =>
      item.detail.occasion === 'today'
        ? ours`${The(item.part)} queda cerca ${near(item)}. Hoy no se permite uno nuevo así. ${NOW}`
        : item.detail.source === 'from-memory'
          ? ours`${The(item.part)} tal vez queda muy cerca ${near(item)}. El condado no ha verificado esa norma.`
          : ours`${The(item.part)} queda muy cerca ${near(item)}. La norma no lo permite.`,
    'lender-distance-short': (item) =>
      ours`${The(item.part)} queda cerca ${near(item)}. Algunos prestamistas no lo permiten.`,
    'bedrooms-above-design': () =>
      ours`La casa tiene más dormitorios de los previstos para su sistema séptico.`,
    'absorption-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`El campo de drenaje es menor de lo que hoy se exige a uno nuevo. ${NOW}`
        : ours`El campo de drenaje es menor de lo que ${required(item)} la norma cuando se autorizó.`,
    'absorption-differs': () => ours`El campo de drenaje no mide lo que dice el registro.`,
    'level-high': ({ part, detail: { room } }) =>
      room === 'pit'
        ? ours`${The(part)} está casi ${by(part, ours`lleno`, ours`llena`)}. Le falta lugar para el agua de medio día.`
        : ours`El nivel del líquido ${ofThe(part)} es muy alto. El agua no sale como debe.`,
    'level-low': ({ part, detail }) =>
      detail.readAgain
        ? ours`El nivel del líquido ${ofThe(part)} es bajo. Puede haber fugas, o la casa estuvo vacía.`
        : ours`El nivel del líquido ${ofThe(part)} es muy bajo. Tiene fugas.`,
    'solids-high': ({ part, detail }) =>
      detail.room === 'privy'
        ? ours`${The(part)} está casi ${by(part, ours`lleno`, ours`llena`)}. Ya toca vaciar o mover.`
        : detail.solidsPassing
          ? ours`${The(part)} está tan ${by(part, ours`lleno`, ours`llena`)} que los lodos pueden haber llegado al campo de drenaje.`
          : ours`Ya toca vaciar ${the(part)}.`,
    'condition-poor': ({ part, detail: { condition, defect, stretch } }) => {
      if (defect !== null)
        return ours`Una cámara vio ${DEFECTS[defect]} en ${the(part)}. Está ${along(stretch ?? HERE)}.`
      switch (condition) {
        case 'cover':
          return ours`La tapa ${ofThe(part)} no está asegurada. Mantenga lejos a los niños.`
        case 'open':
          return ours`${The(part)} tiene la tapa abierta, rota o ausente. Alguien puede caer y morir.`
        case 'left-open':
          return ours`${The(part)} ya no se usa y quedó sin cerrar. Alguien puede caer y morir.`
        case 'top':
          return ours`El techo ${ofThe(part)} no aguanta a una persona. Que nadie se pare encima.`
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
    'load-above-design': ({ detail: { burden } }) => BURDENS[burden ?? 'water-use'],
    'field-burdened': ({ detail: { burden } }) => BURDENS[burden ?? 'vehicles'],
    'equipment-failed': ({ part, detail: { device } }) => FAILED[device ?? 'pump'](part),
    'contract-lapsed': ({ part }) => ours`Nadie tiene contrato para cuidar ${the(part)}. Hace falta uno.`,
    'inspection-incomplete': ({ part, detail: { step } }) =>
      step === null ? ours`La inspección no está completa.` : leftOut(part, step),
    'system-not-on-record': ({ detail: { otherSystem } }) =>
      otherSystem === 'serves-another-lot'
        ? ours`El sistema séptico también sirve a otro lote. El condado no tiene registro de eso.`
        : otherSystem === 'lies-on-another-lot'
          ? ours`Parte del sistema séptico está en otro lote. El condado no tiene registro de eso.`
          : ours`El inspector halló un segundo sistema séptico. El condado no tiene registro de él.`,
    'record-absent': () => ours`El condado no tiene registro de un sistema séptico en esta parcela.`,
    'record-unclear': ({ detail: { neverApproved, borneOut, unsaid } }) =>
      borneOut
        ? ours`Dos permisos no concuerdan. Lo que midió el inspector coincide con uno de ellos.`
        : neverApproved
          ? ours`Un permiso de esta parcela nunca se aprobó. No muestra que se construyera un sistema.`
          : unsaid === 'beside-or-instead'
            ? ours`Una reparación puso un campo de drenaje nuevo. El permiso no dice si el viejo aún se usa.`
            : unsaid === 'which-part'
              ? ours`Un permiso posterior no dice qué parte cambió o cerró.`
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
    'correct-distance': () => ours`El condado va a revisar su registro.`,
    'search-old-numbers': () => ours`El condado buscará en sus archivos viejos.`,
    'correct-to-measured': () => ours`El condado va a poner al día lo que tiene en su registro.`,
    'find-approval': () => ours`El condado buscará si se aprobó o pedirá una inspección.`,
    'say-what-it-serves': () =>
      ours`El condado anotará a qué sirve cada sistema. Pregunte a una compañía de títulos por servidumbres.`,
    'settle-the-papers': () => ours`El condado va a revisar sus permisos y a corregir el registro.`,
    remeasure: () => ours`Un inspector debe tomar otra vez una medida.`,
    'inspect-again': () => ours`Pida que un inspector con licencia vuelva a inspeccionar el sistema.`,
    'finish-inspection': () => ours`Un inspector debe terminar la inspección.`,
    'refill-and-read': () => ours`Llene el tanque con agua. Un inspector debe medir el nivel otra vez.`,
    'stop-discharge': () =>
      ours`Detenga la descarga. Aleje a personas y animales. Haga reparar el sistema con permiso.`,
    'replace-straight-pipe': () =>
      ours`Deje de usar el tubo. Ponga un sistema séptico con permiso. Hasta entonces, que se lleven las aguas negras.`,
    'cover-wiring': () => ours`Corte la luz. Que un electricista con licencia tape los cables hoy mismo.`,
    'renew-contract': () => ours`Muestre al condado un contrato de servicio, o firme uno nuevo.`,
    'stop-use-and-fix': () =>
      ours`Use la menor agua posible. Pida que un instalador con licencia revise el sistema de inmediato.`,
    'repair-equipment': () => ours`Pida que un electricista o técnico con licencia lo repare.`,
    'check-drainfield': () => ours`El condado decidirá si hay que probar el campo de drenaje.`,
    'install-or-accept-part': () => ours`El condado decidirá si hay que poner uno.`,
    'replace-at-transfer': (part) => ours`Cambie ${the(part)} con permiso cuando se venda la propiedad.`,
    'replace-system': (part) => ours`Deje de usar ${the(part)}. Cámbielo con permiso.`,
    'replace-part': (part) => ours`Pida que un instalador con licencia cambie ${the(part)}.`,
    'repair-or-replace': (part) => ours`Pida que un instalador con licencia repare o cambie ${the(part)}.`,
    'remove-load': () => ours`Quite esa carga, o agrande el sistema con un permiso.`,
    'clear-field': () => ours`No deje nada sobre el campo de drenaje. El condado puede pedir más.`,
    'secure-cover': () => ours`Haga asegurar la tapa de inmediato.`,
    'cover-at-once': () =>
      ours`Tápelo y cérquelo de inmediato. Aleje a niños y animales. Haga poner una tapa nueva.`,
    'close-and-fill': () =>
      ours`Tápelo y cérquelo de inmediato. Luego haga vaciarlo y rellenarlo con permiso.`,
    'keep-off': () =>
      ours`Ponga una cerca hoy. Luego se debe cambiar, o vaciar y llenar de tierra, con un permiso.`,
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
    'waive-seen-before': ours`El condado lo dispensó: ya se había visto.`,
    'waive-being-replaced': ours`El condado lo dispensó: la parte se está cambiando con permiso.`,
    'waive-no-way-in': ours`El condado lo dispensó: no se puede alcanzar sin causar daño.`,
    'waive-not-this-system': ours`El condado lo dispensó: este sistema no lo necesita.`,
    'ask-remeasurement': ours`El condado pidió a la empresa que mida otra vez.`,
  },
}
