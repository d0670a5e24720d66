import { content } from '#lib/content/index.ts'
import { materialBy } from '#lib/content/known-materials.ts'
import type { Caution } from '#lib/content/types.ts'
import type { MeasuredState, Method, Role, Use } from '#lib/entry/terms.ts'
import { words } from '../_words/index.ts'
import { cautionWords } from './caution-words.ts'
import { Notice } from './notice.tsx'
import { Section } from './section.tsx'
import { SourceList } from './source-mark.tsx'

export interface Work {
  /** Materials by id; `state` as measured or as on site, where it is known. */
  materials?: readonly { readonly material: string; readonly state?: MeasuredState | undefined }[]
  roles?: readonly Role[]
  uses?: readonly Use[]
  methods?: readonly Method[]
}

/** The cautions that these materials, uses and ways of mixing must show, the gravest first. */
export function cautionsFor({ materials = [], roles = [], uses = [], methods = [] }: Work): Caution[] {
  const { cautions, materials: known } = content()
  // What people added names no cautions of its own: it has those of the part that it plays.
  const added = materials.flatMap(({ material }) =>
    known.has(material) ? [] : (materialBy(material)?.role ?? []),
  )
  const playing = [...roles, ...added]
  return [...cautions.values()].filter(
    ({ id, appliesTo }) =>
      materials.some(
        ({ material, state }) =>
          (appliesTo.materials.includes(material) || known.get(material)?.cautions.includes(id)) &&
          (state === undefined || !appliesTo.exceptStates.includes(state)),
      ) ||
      appliesTo.roles.some((role) => playing.includes(role)) ||
      appliesTo.uses.some((use) => uses.includes(use)) ||
      appliesTo.methods.some((method) => methods.some((one) => one === method)),
  )
}

/** Cautions in one ruled box: each with its short word, and the whole text to open beneath it. */
export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  const t = words('common')
  if (cautions.length === 0) return null
  return (
    <Notice kind="caution">
      <ul className="plain-list caution-list">
        {cautions.map((caution) => {
          const { title, notice, body } = cautionWords(caution)
          return (
            <li key={caution.id}>
              <strong>{title}.</strong> {notice}
              <details>
                <summary>{t('cautions.more', { title })}</summary>
                <div className="prose">
                  {body.map((paragraph) => (
                    <p key={paragraph}>{paragraph}</p>
                  ))}
                  <SourceList sources={caution.sources} />
                </div>
              </details>
            </li>
          )
        })}
      </ul>
    </Notice>
  )
}

/** The same as a section of its own; nothing where there is nothing to beware of. */
export const CautionSection = ({ cautions }: { cautions: readonly Caution[] }) =>
  cautions.length === 0 ? null : (
    <Section id="cautions" title={words('common')('cautions.title')}>
      <Cautions cautions={cautions} />
    </Section>
  )
