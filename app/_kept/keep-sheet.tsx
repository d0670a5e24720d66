import { keepAddress } from '../_ui/keep-address.ts'
import { words } from '../_words/index.ts'

/** Leads to where a sheet is named and kept. Examples that the site typed in are nobody's sheet. */
export const KeepSheet = ({ fresh, address }: { fresh: boolean; address: string }) =>
  fresh ? null : (
    <p className="screen-only">
      <a className="touch" href={keepAddress(address)} rel="nofollow">
        {words('workOut')('result.keep')}
      </a>
    </p>
  )
