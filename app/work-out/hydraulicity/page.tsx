import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Hydraulicity } from './live.tsx'

const of = CALCULATIONS.hydraulicity

export const generateMetadata = () => benchMetadata(of)

/** How hydraulic a lime is by its chemistry. */
export default async function HydraulicityPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Hydraulicity} query={await searchParams} />
}
