import type { OurText } from '../../records/whose.ts'
import type { Language } from '../language.ts'
import { ours } from '../ours.ts'

/** What a check is about in the short words of a status letter: when it came out well, and when it was left open. */
export type Topic = { readonly agrees: OurText; readonly open: OurText }

const topic = (agrees: OurText, open: OurText): Topic => ({ agrees, open })

type Topics = Readonly<Record<string, Topic>>

/** By check; where a check asks twice, by check and facet. A test holds that every check has its words. */
const EN: Topics = {
  'inspection-completeness': topic(
    ours`The inspection covered what is required`,
    ours`what the inspection left out`,
  ),
  'required-device': topic(ours`Baffles in place`, ours`whether a baffle is there`),
  'failure-signs': topic(ours`No sign of failure seen`, ours`signs of failure`),
  'failure-signs | surfacing': topic(ours`No sewage on the ground`, ours`sewage on the ground`),
  'failure-signs | backup': topic(ours`No sewage came up in the house`, ours`sewage in the house`),
  'failure-signs | discharge': topic(ours`No discharge seen`, ours`discharge`),
  'failure-signs | dye': topic(ours`No dye came out`, ours`dye test`),
  'failure-signs | run-back': topic(ours`Nothing ran back at pumping`, ours`run-back at pumping`),
  equipment: topic(ours`Pump and alarm work`, ours`pump and alarm`),
  'service-contract': topic(ours`Service contract in force`, ours`the service contract`),
  'record-presence': topic(ours`An approved permit is on file`, ours`whether a permit is on file`),
  'record-clarity': topic(ours`The file is clear`, ours`what the file says`),
  'capacity-against-record': topic(ours`Capacity as recorded`, ours`capacity against the record`),
  'capacity-against-code': topic(ours`Tank capacity meets the code`, ours`capacity against the code`),
  'capacity-against-code | when permitted': topic(
    ours`Tank capacity met the code when permitted`,
    ours`capacity against the code of its day`,
  ),
  'capacity-against-code | today': topic(
    ours`Tank capacity meets today’s code`,
    ours`capacity against today’s code`,
  ),
  'absorption-against-code': topic(ours`Drainfield meets the code`, ours`drainfield size against the code`),
  'absorption-against-code | when permitted': topic(
    ours`Drainfield met the code when permitted`,
    ours`drainfield size against the code of its day`,
  ),
  'absorption-against-code | today': topic(
    ours`Drainfield meets today’s code`,
    ours`drainfield size against today’s code`,
  ),
  'absorption-by-soil': topic(
    ours`Drainfield meets the code for its soil`,
    ours`drainfield size against the soil`,
  ),
  'stated-area': topic(
    ours`Drainfield as large as the record says`,
    ours`drainfield size against the record`,
  ),
  'tank-construction': topic(ours`Tank built as the code requires`, ours`how the tank is built`),
  compartments: topic(ours`Compartments as the code requires`, ours`the number of compartments`),
  'accepted-type': topic(ours`Type accepted by the code`, ours`whether its type is accepted`),
  'required-filter': topic(ours`Outlet filter as the code requires`, ours`whether there is an outlet filter`),
  'pumping-interval': topic(ours`Pumped often enough`, ours`when pumping is due`),
  'capacity-by-flow': topic(
    ours`Tank capacity meets the code for its flow`,
    ours`capacity against the code for its flow`,
  ),
  'other-systems': topic(ours`Other systems and lots as recorded`, ours`other systems and lots`),
  bedrooms: topic(ours`No more bedrooms than designed for`, ours`bedrooms against the design`),
  loads: topic(ours`No load beyond the design`, ours`loads on the system`),
  'flow-test': topic(ours`Took the water of the test`, ours`flow test`),
  'room-left': topic(ours`Room left in the pit`, ours`room in the pit`),
  'privy-room': topic(ours`Room left in the outhouse`, ours`room in the outhouse`),
  'field-burdens': topic(ours`Drainfield clear`, ours`what lies over the drainfield`),
  'component-presence': topic(ours`Found in the ground`, ours`whether it is there`),
  'component-on-record': topic(ours`On record`, ours`whether it is on record`),
  'line-material': topic(ours`Pipe as recorded`, ours`pipe against the record`),
  'line-stretches': topic(ours`Each stretch of pipe as recorded`, ours`each stretch of the pipe`),
  'line-defects': topic(ours`No damage seen in the pipe`, ours`damage in the pipe`),
  material: topic(ours`Material as recorded`, ours`material`),
  'type-of-component': topic(ours`Type as recorded`, ours`type`),
  position: topic(ours`Where the record puts it`, ours`location against the record`),
  'setback-today': topic(ours`Far enough from the well today`, ours`distance from the well today`),
  'building-setback': topic(ours`Far enough from the house`, ours`distance from the house`),
  setback: topic(ours`Far enough from the well`, ours`distance from the well`),
  'kept-distances': topic(ours`Far enough from the rest`, ours`distances to other things`),
  'kept-distances | property-line': topic(
    ours`Far enough from the property line`,
    ours`distance from the property line`,
  ),
  'kept-distances-today': topic(ours`Far enough from the rest today`, ours`distances to other things today`),
  'kept-distances-today | property-line': topic(
    ours`Far enough from the property line today`,
    ours`distance from the property line today`,
  ),
  'lender-distances': topic(ours`Far enough from the rest for lenders`, ours`other distances for lenders`),
  'stated-distance': topic(ours`As far away as the record says`, ours`distances against the record`),
  'lender-setback': topic(
    ours`Far enough from the well for lenders`,
    ours`distance from the well for lenders`,
  ),
  'well-since': topic(ours`Far enough from the new well`, ours`distance from a new well`),
  level: topic(ours`Liquid where it should be`, ours`liquid level`),
  solids: topic(ours`No pumping due`, ours`scum and sludge`),
  condition: topic(ours`Sound as seen`, ours`condition`),
  lid: topic(ours`Cover secured`, ours`cover`),
  'left-open': topic(ours`What is out of use is closed`, ours`whether what is out of use is closed`),
  top: topic(ours`The top holds`, ours`whether the top holds`),
  'metal-tank-age': topic(ours`Within the age allowed for metal`, ours`age of the tank`),
  'findings-age': topic(ours`The inspection still counts`, ours`whether the inspection still counts`),
}

const ES: Topics = {
  'inspection-completeness': topic(
    ours`La inspección hizo lo que debe`,
    ours`lo que dejó fuera la inspección`,
  ),
  'required-device': topic(ours`Deflectores en su lugar`, ours`si hay deflector`),
  'failure-signs': topic(ours`No se vieron señales de falla`, ours`señales de falla`),
  'failure-signs | surfacing': topic(ours`Sin aguas negras en el suelo`, ours`aguas negras en el suelo`),
  'failure-signs | backup': topic(ours`No subieron aguas negras en la casa`, ours`aguas negras en la casa`),
  'failure-signs | discharge': topic(ours`No se vio descarga`, ours`descarga`),
  'failure-signs | dye': topic(ours`No salió colorante`, ours`prueba de colorante`),
  'failure-signs | run-back': topic(ours`Nada regresó al vaciar`, ours`regreso al vaciar`),
  equipment: topic(ours`La bomba y la alarma funcionan`, ours`la bomba y la alarma`),
  'service-contract': topic(ours`Contrato de servicio en vigor`, ours`el contrato de servicio`),
  'record-presence': topic(ours`Hay un permiso aprobado`, ours`si hay un permiso`),
  'record-clarity': topic(ours`El archivo es claro`, ours`qué dice el archivo`),
  'capacity-against-record': topic(ours`Capacidad según el registro`, ours`la capacidad según el registro`),
  'capacity-against-code': topic(ours`La capacidad cumple la norma`, ours`la capacidad según la norma`),
  'capacity-against-code | when permitted': topic(
    ours`La capacidad cumplía la norma al autorizarse`,
    ours`la capacidad según la norma de entonces`,
  ),
  'capacity-against-code | today': topic(
    ours`La capacidad cumple la norma de hoy`,
    ours`la capacidad según la norma de hoy`,
  ),
  'absorption-against-code': topic(
    ours`El campo de drenaje cumple la norma`,
    ours`el campo de drenaje según la norma`,
  ),
  'absorption-against-code | when permitted': topic(
    ours`El campo de drenaje cumplía la norma al autorizarse`,
    ours`el campo de drenaje según la norma de entonces`,
  ),
  'absorption-against-code | today': topic(
    ours`El campo de drenaje cumple la norma de hoy`,
    ours`el campo de drenaje según la norma de hoy`,
  ),
  'absorption-by-soil': topic(
    ours`El campo de drenaje cumple la norma de su suelo`,
    ours`el campo de drenaje según el suelo`,
  ),
  'stated-area': topic(ours`Campo de drenaje como dice el registro`, ours`el tamaño contra el registro`),
  'tank-construction': topic(ours`Tanque hecho como exige la norma`, ours`cómo está hecho el tanque`),
  compartments: topic(ours`Compartimientos según la norma`, ours`el número de compartimientos`),
  'accepted-type': topic(ours`Tipo aceptado por la norma`, ours`si se acepta su tipo`),
  'required-filter': topic(ours`Filtro de salida según la norma`, ours`si hay filtro de salida`),
  'pumping-interval': topic(ours`Vaciado con la frecuencia debida`, ours`cuándo toca vaciar`),
  'capacity-by-flow': topic(
    ours`La capacidad cumple la norma para su flujo`,
    ours`la capacidad según la norma para su flujo`,
  ),
  'other-systems': topic(ours`Otros sistemas y lotes según el registro`, ours`otros sistemas y lotes`),
  bedrooms: topic(ours`No hay más dormitorios que los previstos`, ours`los dormitorios según el diseño`),
  loads: topic(ours`Sin carga de más`, ours`las cargas del sistema`),
  'flow-test': topic(ours`Recibió el agua de la prueba`, ours`la prueba de flujo`),
  'room-left': topic(ours`Hay lugar en el pozo`, ours`el lugar que queda en el pozo`),
  'privy-room': topic(ours`Hay lugar en la letrina`, ours`el lugar que queda en la letrina`),
  'field-burdens': topic(ours`Campo de drenaje despejado`, ours`lo que hay sobre el campo de drenaje`),
  'component-presence': topic(ours`Encontrado en el terreno`, ours`si está en el terreno`),
  'component-on-record': topic(ours`En el registro`, ours`si está en el registro`),
  'line-material': topic(ours`Tubería según el registro`, ours`la tubería según el registro`),
  'line-stretches': topic(ours`Cada tramo según el registro`, ours`cada tramo de la tubería`),
  'line-defects': topic(ours`Sin daños a la vista en la tubería`, ours`los daños de la tubería`),
  material: topic(ours`Material según el registro`, ours`el material`),
  'type-of-component': topic(ours`Tipo según el registro`, ours`el tipo`),
  position: topic(ours`Donde dice el registro`, ours`el lugar según el registro`),
  'setback-today': topic(ours`Bastante lejos del pozo de agua hoy`, ours`la distancia al pozo de agua hoy`),
  'building-setback': topic(ours`Bastante lejos de la casa`, ours`la distancia a la casa`),
  setback: topic(ours`Bastante lejos del pozo de agua`, ours`la distancia al pozo de agua`),
  'kept-distances': topic(ours`Bastante lejos de lo demás`, ours`las distancias a otras cosas`),
  'kept-distances | property-line': topic(
    ours`Bastante lejos del límite del terreno`,
    ours`la distancia al límite del terreno`,
  ),
  'kept-distances-today': topic(ours`Bastante lejos de lo demás hoy`, ours`las distancias a otras cosas hoy`),
  'kept-distances-today | property-line': topic(
    ours`Bastante lejos del límite del terreno hoy`,
    ours`la distancia al límite del terreno hoy`,
  ),
  'lender-distances': topic(
    ours`Bastante lejos de lo demás para prestamistas`,
    ours`otras distancias para prestamistas`,
  ),
  'stated-distance': topic(ours`Tan lejos como dice el registro`, ours`las distancias contra el registro`),
  'lender-setback': topic(
    ours`Bastante lejos del pozo de agua para prestamistas`,
    ours`la distancia al pozo de agua para prestamistas`,
  ),
  'well-since': topic(
    ours`Bastante lejos del pozo de agua nuevo`,
    ours`la distancia a un pozo de agua nuevo`,
  ),
  level: topic(ours`Líquido al nivel de la salida`, ours`el nivel del líquido`),
  solids: topic(ours`No toca vaciar`, ours`las grasas y los lodos`),
  condition: topic(ours`En buen estado a la vista`, ours`el estado`),
  lid: topic(ours`Tapa asegurada`, ours`la tapa`),
  'left-open': topic(ours`Lo que no se usa está cerrado`, ours`si lo que no se usa está cerrado`),
  top: topic(ours`El techo aguanta`, ours`si el techo aguanta`),
  'metal-tank-age': topic(ours`Dentro de la edad permitida para metal`, ours`la edad del tanque`),
  'findings-age': topic(ours`La inspección aún cuenta`, ours`si la inspección aún cuenta`),
}

export const TOPICS: { readonly [L in Language]: Topics } = { en: EN, es: ES }

export const topicOf = (language: Language, check: string, facet: string | null): Topic | undefined =>
  TOPICS[language][`${check} | ${facet}`] ?? TOPICS[language][check]
