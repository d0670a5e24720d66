import { content } from '#lib/content/index.ts'
import type { Caution } from '#lib/content/types.ts'
import type { Method, Role, Use } from '#lib/entry/terms.ts'
import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'
import { SourceMark } from './source-mark.tsx'

export interface Work {
  materials?: readonly string[]
  roles?: readonly Role[]
  uses?: readonly Use[]
  methods?: readonly Method[]
}

/** The cautions that these materials, uses and ways of mixing must show, in the order of the files. */
export function cautionsFor({ materials = [], roles = [], uses = [], methods = [] }: Work): Caution[] {
  const { cautions, materials: known } = content()
  const named = new Set(materials.flatMap((id) => known.get(id)?.cautions ?? []))
  return [...cautions.values()].filter(
    ({ id, appliesTo }) =>
      named.has(id) ||
      appliesTo.materials.some((material) => materials.includes(material)) ||
      appliesTo.roles.some((role) => roles.includes(role)) ||
      appliesTo.uses.some((use) => uses.includes(use)) ||
      appliesTo.methods.some((method) => methods.some((one) => one === method)),
  )
}

/** Cautions as notices: the short word first, the whole text to open beneath it. */
export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  const t = words('common')
  return cautions.map((caution) => (
    <Notice key={caution.id} kind="caution" title={caution.title}>
      <p>{caution.notice}</p>
      <details>
        <summary>{t('cautions.more')}</summary>
        <div className="prose">
          {caution.body.map((paragraph) => (
            <p key={paragraph}>{paragraph}</p>
          ))}
          <p className="note">
            {caution.sources.map((citation, index) => (
              <span key={`${citation.source}-${citation.locator ?? ''}`}>
                {index > 0 && '; '}
                <SourceMark
                  source={citation.source}
                  {...(citation.locator !== undefined && { locator: citation.locator })}
                />
              </span>
            ))}
          </p>
        </div>
      </details>
    </Notice>
  ))
}
