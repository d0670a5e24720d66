import { v7 } from 'uuid'
import { words } from '../_words/index.ts'
import { photosAddress } from './add/address.ts'

/** Photos sent as a plain form: whole, without progress, without a way to go on after a cut. */
export function PlainPhotoForm({ back }: { back: string }) {
  const t = words('photos')
  return (
    <form className="act" method="post" encType="multipart/form-data" action={photosAddress(back)}>
      <input type="hidden" name="key" value={v7()} />
      <p className="field-hint" id="plain-hint">
        {t('pick.kinds')} {t('pick.faces')}
      </p>
      <label className="photo-tick">
        <input type="checkbox" name="keepDate" />
        <span>{t('pick.keepDate')}</span>
      </label>
      <div className="field">
        <label htmlFor="plain-photo">{t('pick.choose')}</label>
        <input
          id="plain-photo"
          type="file"
          name="photo"
          accept="image/jpeg,image/png,image/webp"
          multiple
          aria-describedby="plain-hint"
        />
      </div>
      <div className="actions">
        <button className="button" type="submit">
          {t('own.addPlain')}
        </button>
      </div>
    </form>
  )
}
