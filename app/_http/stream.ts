/**
 * An answer that is sent as it is made, however long: the next part is made when the one before has gone out,
 * and nothing more once nobody reads on. What fails before the first part is thrown, and can still be told.
 */
export async function answerStream(
  parts: AsyncIterable<string>,
  headers: Readonly<Record<string, string>>,
): Promise<Response> {
  const reader = parts[Symbol.asyncIterator]()
  const encoder = new TextEncoder()
  let part = await reader.next()
  const stream = new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        if (part.done === true) return controller.close()
        controller.enqueue(encoder.encode(part.value))
        part = await reader.next()
      },
      async cancel() {
        await reader.return?.()
      },
    },
    { highWaterMark: 1 },
  )
  return new Response(stream, { headers })
}
