import { unreachable } from '../../base/invariant.ts'
import { err, ok } from '../../base/result.ts'
import { type Issue, under } from '../../measure/issue.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import type { Body, Measured } from './body.ts'
import { horizontalCylinder } from './horizontal-cylinder.ts'
import { horizontalPrism } from './horizontal-prism.ts'
import { rectangular } from './rectangular.ts'
import { sphere } from './sphere.ts'
import type { TankShape } from './tank-shape.ts'
import { verticalCylinder } from './vertical-cylinder.ts'
import { verticalOval } from './vertical-oval.ts'

/** The liquid body of any shape, in cu ft. */
export function bodyOf(shape: TankShape): Measured {
  switch (shape.kind) {
    case 'rectangular':
      return rectangular(shape)
    case 'vertical-cylinder':
      return verticalCylinder(shape)
    case 'horizontal-cylinder':
      return horizontalCylinder(shape)
    case 'horizontal-oval':
    case 'horizontal-ellipse':
      return horizontalPrism(shape)
    case 'vertical-oval':
      return verticalOval(shape)
    case 'sphere':
      return sphere(shape)
    case 'two-compartments':
      return sumOf([
        ['/first', 'First compartment', shape.first],
        ['/second', 'Second compartment', shape.second],
      ])
    case 'in-series':
      return shape.tanks.length === 0
        ? err([{ pointer: '/tanks', message: 'There is no tank in the series.' }])
        : sumOf(shape.tanks.map((tank, i) => [`/tanks/${i}`, `Tank ${i + 1}`, tank]))
    default:
      return unreachable(shape, 'tank shape')
  }
}

/** V = V1 + V2 + …; a cause that several parts share goes on entering them all. */
function sumOf(parts: readonly (readonly [pointer: string, name: string, shape: TankShape])[]): Measured {
  const issues: Issue[] = []
  const bodies: { readonly name: string; readonly body: Body }[] = []
  for (const [pointer, name, shape] of parts) {
    const measured = bodyOf(shape)
    if (measured.ok) bodies.push({ name, body: measured.value })
    else issues.push(...under(pointer, measured.error))
  }
  if (issues.length > 0) return err(issues)

  const cuFt = bodies.reduce((sum, { body }) => sum + body.cuFt, 0)
  const eachOf = (values: readonly number[], of: (body: Body, own: readonly number[]) => number): number => {
    let at = 0
    return bodies.reduce((sum, { body }) => {
      const own = values.slice(at, at + body.inputs.length)
      at += body.inputs.length
      return sum + of(body, own)
    }, 0)
  }
  return ok({
    inputs: bodies.flatMap(({ body }) => body.inputs),
    cuFt,
    slopes: bodies.flatMap(({ body }) => body.slopes.slice(0, body.inputs.length)),
    volumeAt: (values) => eachOf(values, (body, own) => body.volumeAt(own)),
    surfaceAt: (values) => eachOf(values, (body, own) => body.surfaceAt(own)),
    write: () => [
      ...bodies.flatMap(({ name, body }) =>
        body.write().map((step) => ({ ...step, says: `${name}: ${step.says}` })),
      ),
      {
        says: 'All together',
        formula: bodies.map((_, i) => `V${i + 1}`).join(' + '),
        numbers: bodies.map(({ body }) => `${n(body.cuFt)} cu ft`).join(' + '),
        result: `${n(cuFt)} cu ft`,
      },
    ],
  })
}
