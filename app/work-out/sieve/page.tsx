import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { Sieve } from './live.tsx'
import './chart.css'

const of = CALCULATIONS.sieve

export const generateMetadata = () => benchMetadata(of)

/** Grading of a sand, and blends of several. */
export default async function SievePage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={Sieve} query={await searchParams} />
}
