import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Sand } from './live.tsx'

const of = CALCULATIONS.sand

export const generateMetadata = () => benchMetadata(of)

/** Voids, bulking and moisture of a sand. */
export default async function SandPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Sand} query={await searchParams} />
}
