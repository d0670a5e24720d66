import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Compatibility } from './live.tsx'

const of = CALCULATIONS.compatibility

export const generateMetadata = () => benchMetadata(of)

/** A mortar held against the wall that it is for, rule by rule. */
export default async function CompatibilityPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Compatibility} query={await searchParams} />
}
