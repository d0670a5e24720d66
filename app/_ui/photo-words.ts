import { words } from '../_words/index.ts'

/** The words of {@link PhotoPicker} and its camera: a browser script is sent these, not the whole catalogue. */
export function photoWords() {
  const t = words('photos')
  return {
    legend: t('pick.legend'),
    choose: t('pick.choose'),
    take: t('pick.take'),
    keepDate: t('pick.keepDate'),
    kinds: t('pick.kinds'),
    faces: t('pick.faces'),
    sending: t('pick.sending'),
    offline: t('pick.offline'),
    working: t('pick.working'),
    failed: t('pick.failed'),
    stop: t('pick.stop'),
    again: t('pick.again'),
    full: t('pick.full'),
    // The name is put in by the script.
    ready: t('pick.ready', { name: '{name}' }),
    already: t('pick.already', { name: '{name}' }),
    leftOut: t('pick.leftOut', { name: '{name}' }),
    frame: t('camera.frame'),
    earlier: t('camera.earlier'),
    open: t('camera.open'),
    shoot: t('camera.shoot'),
    close: t('camera.close'),
    none: t('camera.none'),
    over: t('camera.over'),
  }
}

export type PhotoWords = ReturnType<typeof photoWords>
