import type { Operation } from '../operation.ts'
import { comparisonSums } from './compare.ts'
import { coreSums } from './core.ts'
import { heapSums } from './heap.ts'
import { limeSums } from './lime.ts'
import { sandSums } from './sand.ts'
import { soilSums } from './soil.ts'
import { timeSums } from './time.ts'
import { wallSums } from './wall.ts'

/** Every calculation that anyone may ask for by POST, each at `/api/v1/sums/{its name}`. */
export const sumOperations = [
  ...coreSums,
  ...comparisonSums,
  ...heapSums,
  ...sandSums,
  ...limeSums,
  ...timeSums,
  ...wallSums,
  ...soilSums,
] as readonly unknown[] as readonly Operation[]
