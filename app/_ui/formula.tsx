/**
 * A formula as the sums write it, with what follows an underscore set low: `m_q` becomes m with a small q.
 * Nothing else is marked up in them.
 */
export const Formula = ({ text }: { text: string }) => (
  <span className="formula">
    {text.split(/_([\p{L}\d,]+)/u).map((piece, index) =>
      // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one fixed text never move
      index % 2 === 1 ? <sub key={index}>{piece}</sub> : piece,
    )}
  </span>
)
