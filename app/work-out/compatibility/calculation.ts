import { compareWithWall, type Measures, type RuleFinding } from '#lib/mortar/compatibility.ts'
import {
  COMPATIBILITY_RULES,
  MORTAR_CONTENTS,
  SALT_IONS,
  WALL_CONDITIONS,
} from '#lib/mortar/compatibility-rules.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { fieldsOf, MEASURES } from './fields.ts'
import { show } from './show.ts'

/** A mortar held against the wall, rule by rule. There is no score and no verdict. */
export const compatibility: Calculation<readonly RuleFinding[]> = {
  name: 'compatibility',
  uses: ({ id }) => id === 'lime-cl90' || id.startsWith('lime-nhl'),
  sources: [...new Set(COMPATIBILITY_RULES.flatMap(({ source }) => source?.split(', ')[0] ?? []))],
  fields: fieldsOf,
  work: (given) =>
    compareWithWall({
      mortar: {
        measures: measuresOf('mortar', given),
        contents: MORTAR_CONTENTS.filter((content) => given.checked(`has-${content}`)),
      },
      unit: measuresOf('unit', given),
      oldMortar: { compressiveStrength: given.amount('old-strength') },
      wall: {
        conditions: WALL_CONDITIONS.filter((condition) => given.checked(`wall-${condition}`)),
        salts: Object.fromEntries(SALT_IONS.map((ion) => [ion, given.amount(`salt-${ion}`)])),
      },
    }),
  show,
}

const measuresOf = (of: 'mortar' | 'unit', given: Given): Measures =>
  Object.fromEntries(
    Object.entries(MEASURES).map(([name, measure]) => [measure, given.amount(`${of}-${name}`)]),
  )
