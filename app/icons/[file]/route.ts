import { readFile } from 'node:fs/promises'
import sharp from 'sharp'
import { answerProblem, problemOf } from '../../_http/problem.ts'

/** Widths that browsers ask for: a home screen, a start page, and one system's own. */
const WIDTHS = [180, 192, 512]

const drawn = new Map<number, Promise<Buffer>>()

/** The icon in a width, as a picture of dots for systems that take no drawing. Drawn once. */
export async function GET(_: Request, { params }: { params: Promise<{ file: string }> }): Promise<Response> {
  const { file } = await params
  const width = Number(/^(\d{3})\.png$/.exec(file)?.[1])
  if (!WIDTHS.includes(width)) return answerProblem(problemOf(404))
  const made = drawn.get(width) ?? draw(width)
  drawn.set(width, made)
  const headers = { 'Content-Type': 'image/png', 'Cache-Control': 'public, max-age=86400' }
  return new Response(new Uint8Array(await made), { headers })
}

/** The drawing is 30 units wide, which 72 dots to the inch draw as 30 dots. */
const draw = async (width: number) =>
  sharp(await readFile('app/icon.svg'), { density: (72 * width) / 30 })
    .resize(width, width)
    .png()
    .toBuffer()
