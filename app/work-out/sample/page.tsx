import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { heldRatios } from './held-ratios.ts'
import { Sample } from './live.tsx'

const of = CALCULATIONS.sample

export const generateMetadata = () => benchMetadata(of)

/** What a mortar was mixed of, from what acid dissolved, with the rows and recipes nearest to it. */
export default async function SamplePage({ searchParams }: { searchParams: Promise<Query> }) {
  const [query, held] = await Promise.all([searchParams, heldRatios()])
  return <BenchPage of={of} Live={Sample} query={query} held={held} />
}
