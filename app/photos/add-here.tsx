'use client'

import { useRouter } from 'next/navigation'
import { useSyncExternalStore } from 'react'
import { PhotoPicker } from '../_ui/photo-picker.tsx'
import type { ReadyPhoto } from '../_ui/photo-send.ts'
import type { PhotoWords } from '../_ui/photo-words.ts'

const never = () => () => {}

/** The picker where there is a script; the plain form it replaces where there is none. */
export function AddHere({ words, plain }: { words: PhotoWords; plain: React.ReactNode }) {
  const router = useRouter()
  const scripted = useSyncExternalStore(
    never,
    () => true,
    () => false,
  )
  const ready = ({ known }: ReadyPhoto) => {
    router.refresh()
    return { already: known }
  }
  return scripted ? <PhotoPicker words={words} room={30} onReady={ready} /> : plain
}
