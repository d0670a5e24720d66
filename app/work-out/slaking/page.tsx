import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Slaking } from './live.tsx'

const of = CALCULATIONS.slaking

export const generateMetadata = () => benchMetadata(of)

/** What becomes of a batch of quicklime. */
export default async function SlakingPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Slaking} query={await searchParams} />
}
