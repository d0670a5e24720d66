import type { Query } from '../../_ui/query.ts'
import { BenchPage, benchMetadata } from '../../_ui/workshop/bench-page.tsx'
import { CALCULATIONS } from '../calculations.ts'
import { ConvertRatio } from './live.tsx'

const of = CALCULATIONS['convert-ratio']

export const generateMetadata = () => benchMetadata(of)

/** The ratio of a mortar on another basis. */
export default async function ConvertRatioPage({ searchParams }: { searchParams: Promise<Query> }) {
  return <BenchPage of={of} Live={ConvertRatio} query={await searchParams} />
}
