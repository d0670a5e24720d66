import { Fragment, type ReactNode } from 'react'
import type { GuideBlock, GuideText, LinkTarget } from '#lib/content/types.ts'
import { Hinted, type Piece } from '../../_ui/hint.tsx'

type Hint = (text: string) => Piece[]

/** A block whose words are ready to be drawn; the key is its first words. */
interface Drawn {
  readonly key: string
  readonly node: ReactNode
}

interface GuideSection {
  readonly id: string
  readonly title: string
  readonly blocks: Drawn[]
}

/** A guide's blocks under their headings, hints marked in reading order; `opening` stands before the first. */
export function sectionsOf(
  blocks: readonly GuideBlock[],
  hint: Hint,
): { opening: Drawn[]; sections: GuideSection[] } {
  const opening: Drawn[] = []
  const sections: GuideSection[] = []
  for (const block of blocks) {
    if (block.kind === 'heading') sections.push({ id: block.id, title: block.text, blocks: [] })
    else (sections.at(-1)?.blocks ?? opening).push(draw(block, hint))
  }
  return { opening, sections }
}

function draw(block: Exclude<GuideBlock, { kind: 'heading' }>, hint: Hint): Drawn {
  if (block.kind === 'paragraph')
    return { key: textOf(block.words), node: <p>{drawWords(block.words, hint)}</p> }
  const items = block.items.map((item) => <li key={textOf(item)}>{drawWords(item, hint)}</li>)
  return {
    key: block.items.map(textOf).join(' '),
    node: block.ordered ? <ol>{items}</ol> : <ul>{items}</ul>,
  }
}

const textOf = (words: readonly GuideText[]) => words.map(({ text }) => text).join('')

const drawWords = (words: readonly GuideText[], hint: Hint): ReactNode[] =>
  words.map(({ text, to }) =>
    to === undefined ? (
      <Hinted key={text} pieces={hint(text)} />
    ) : (
      <a key={text} href={addressOf(to)} {...(to.collection === 'elsewhere' && { rel: 'noreferrer' })}>
        {text}
      </a>
    ),
  )

/** Where a link of a guide leads on this site. */
function addressOf({ collection, id, anchor }: LinkTarget): string {
  if (collection === 'elsewhere') return id
  if (collection === 'cautions') return `/cautions#${id}`
  return `/${collection}/${id}${anchor === undefined ? '' : `#${anchor}`}`
}

export const GuideBlocks = ({ blocks }: { blocks: readonly Drawn[] }) =>
  blocks.map(({ key, node }) => <Fragment key={key}>{node}</Fragment>)
