/** What a browser keeps: its keys are its own, as those of the platform's are. */
export function makeStore(): object {
  const store: Record<string, string> = {}
  const methods = {
    getItem: (key: string) => store[key] ?? null,
    setItem: (key: string, text: string) => {
      store[key] = text
    },
    removeItem: (key: string) => {
      delete store[key]
    },
  }
  return Object.setPrototypeOf(store, methods)
}
