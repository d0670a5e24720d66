import { defineWork } from './spec.ts'

/** Mortar asked for by its volume. */
export const volume = defineWork({
  fields: { volumeL: { symbol: 'V', unit: 'L', limits: { above: 0, max: 1e9, unit: 'L' } } },
  formula: 'V',
  netL: ({ volumeL }) => volumeL,
})
