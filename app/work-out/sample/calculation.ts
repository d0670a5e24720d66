import { exactly } from '#lib/mortar/range.ts'
import { analyseSample, FINES_KINDS, type SampleAnalysis } from '#lib/mortar/sample.ts'
import type { Calculation } from '../../_ui/workshop/calculation.ts'
import { faultsAt } from '../../_ui/workshop/faults-at.ts'
import { LIME_FIGURES, propertiesOf } from '../../_ui/workshop/own-figures.ts'
import { CO2, fieldsOf } from './fields.ts'
import { show } from './show.ts'

/** What acid dissolved of a mortar and what it left, to the proportions it was mixed in. */
export const sample: Calculation<SampleAnalysis> = {
  name: 'sample',
  uses: ({ role }) => role === 'lime' || role === 'aggregate' || role === 'earth',
  sources: ['iupac-atomic-weights', 'middendorf-2005'],
  vocabularies: ['measured-states'],
  fields: fieldsOf,
  work(given, data) {
    const ids = Object.keys(data.materials)
    const material = (name: string) => data.materials[given.choice(name, ids)]
    const measured = given.choice('co2', CO2) === 'measured'
    return faultsAt(
      analyseSample({
        sampleG: given.need('sample-g').typical,
        aggregateG: given.need('aggregate-g').typical,
        finesG: given.need('fines-g').typical,
        balanceG: given.need('balance-g').typical,
        fines: given.choice('fines', FINES_KINDS),
        ...(measured && { co2G: given.need('co2-g') }),
        // Where the carbon dioxide was measured it says how much has carbonated; the sums leave this out.
        carbonation: measured ? exactly(1) : given.need('carbonation'),
        calcareousShare: given.need('calcareous'),
        otherSolubleShare: given.need('other'),
        lime: propertiesOf('lime', material('lime'), LIME_FIGURES, given),
        aggregate: propertiesOf('aggregate', material('aggregate'), ['bulkDensity'], given),
      }),
      [[/^(?=(?:lime|aggregate)\.)/, 'materials.']],
    )
  },
  show,
}
