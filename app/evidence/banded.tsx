import { bandText, shareText } from './figures.ts'

/** A share with the limits of 95 in 100 beneath it. */
export const Banded = (props: {
  share: { readonly low: number; readonly high: number; readonly bandLow: number; readonly bandHigh: number }
}) => (
  <>
    {shareText(props.share)} <span className="note block">{bandText(props.share)}</span>
  </>
)
