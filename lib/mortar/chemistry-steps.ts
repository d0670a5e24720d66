import type { ChemistryInput } from './chemistry.ts'
import { type Step, working } from './explain.ts'
import type { Range } from './range.ts'

const CEMENTATION = 'eckel-1905'
const CANDLOT = 'us-cement-handbook-1905, art. 2, table 1'

/** The working of the indices and of the free lime, with typical numbers. */
export function explainChemistry(
  input: ChemistryInput,
  found: Readonly<Record<'candlot' | 'full' | 'cementation' | 'most' | 'least', Range>>,
  freeCaO: Range,
): Step[] {
  const [s, a, f] = [input.sio2.typical, input.al2o3.typical, input.fe2o3.typical]
  const [c, m] = [input.cao.typical, input.mgo.typical]
  return [
    {
      symbol: 'i',
      means: 'analysis.chemistryCandlot',
      formula: '(SiO2 + Al2O3) / CaO',
      numbers: working`(${s} + ${a}) / ${c}`,
      result: found.candlot,
      unit: '1',
      source: CANDLOT,
    },
    {
      symbol: 'HI',
      means: 'analysis.chemistryFull',
      formula: '(SiO2 + Al2O3 + Fe2O3) / (CaO + MgO)',
      numbers: working`(${s} + ${a} + ${f}) / (${c} + ${m})`,
      result: found.full,
      unit: '1',
    },
    {
      symbol: 'CI',
      means: 'analysis.chemistryCementation',
      formula: '(2.8 SiO2 + 1.1 Al2O3 + 0.7 Fe2O3) / (CaO + 1.4 MgO)',
      numbers: working`(2.8 · ${s} + 1.1 · ${a} + 0.7 · ${f}) / (${c} + 1.4 · ${m})`,
      result: found.cementation,
      unit: '1',
      source: CEMENTATION,
    },
    {
      symbol: 'CaO_free',
      means: 'analysis.chemistryFreeLime',
      formula: '(CaO_least + CaO_most) / 2',
      numbers: working`(${found.least.typical} + ${found.most.typical}) / 2`,
      result: freeCaO,
      unit: '%',
    },
  ]
}
