import type { ReactNode } from 'react'

/** The fields that narrow a list, and the button that shows it. A plain GET form: the address holds the choice. */
export const ListForm = (props: { action: string; send: string; children: ReactNode }) => (
  <form className="filter" method="get" action={props.action}>
    <div className="form-grid">{props.children}</div>
    <div className="actions">
      <button className="button" type="submit">
        {props.send}
      </button>
    </div>
  </form>
)
