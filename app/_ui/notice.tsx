import type { ReactNode } from 'react'
import { words } from '../_words/index.ts'

export type NoticeKind = 'note' | 'caution' | 'hazard' | 'invented' | 'withdrawn'

/** Something to be read before going on. Its kind is always in words, never in colour alone. */
export function Notice(props: { kind: NoticeKind; title?: ReactNode; id?: string; children: ReactNode }) {
  return (
    <div className={`notice notice-${props.kind}`} id={props.id} role="note">
      <p className="notice-label">{words('common')(`notice.${props.kind}`)}</p>
      {props.title !== undefined && <p className="notice-title">{props.title}</p>}
      {props.children}
    </div>
  )
}
