import type { BenchPageOf } from '../_ui/workshop/bench-page.tsx'
import { carbon } from './carbon/calculation.ts'
import { compatibility } from './compatibility/calculation.ts'
import { convertRatio } from './convert-ratio/calculation.ts'
import { cure } from './cure/calculation.ts'
import { hydraulicity } from './hydraulicity/calculation.ts'
import { limeCertificate } from './lime-certificate/calculation.ts'
import { sample } from './sample/calculation.ts'
import { sand } from './sand/calculation.ts'
import { sieve } from './sieve/calculation.ts'
import { slaking } from './slaking/calculation.ts'
import { subsoil } from './subsoil/calculation.ts'

/** Every calculation page by the last part of its address, in the order of the list on /work-out. */
export const CALCULATIONS = {
  'convert-ratio': { calculation: convertRatio, page: 'convertRatio' },
  sand: { calculation: sand, page: 'sand', cautions: ['silica-dust'] },
  slaking: { calculation: slaking, page: 'slaking', cautions: ['quicklime', 'hot-mortar', 'lime-waste'] },
  'lime-certificate': { calculation: limeCertificate, page: 'limeCertificate' },
  hydraulicity: { calculation: hydraulicity, page: 'hydraulicity' },
  sieve: { calculation: sieve, page: 'sieve', cautions: ['silica-dust'] },
  subsoil: { calculation: subsoil, page: 'subsoil', cautions: ['quicklime', 'lime-putty-and-dust'] },
  sample: { calculation: sample, page: 'sample', cautions: ['silica-dust'] },
  cure: { calculation: cure, page: 'cure', cautions: ['lime-putty-and-dust', 'working-at-height'] },
  carbon: { calculation: carbon, page: 'carbon' },
  compatibility: { calculation: compatibility, page: 'compatibility' },
} as const satisfies Record<string, BenchPageOf>

/** A page by the last part of its address. */
export const calculationNamed = (name: string): BenchPageOf | undefined =>
  Object.hasOwn(CALCULATIONS, name) ? CALCULATIONS[name as keyof typeof CALCULATIONS] : undefined
