import { revalidatePath } from 'next/cache'
import { redirect } from './redirect.ts'

/** Leads on from a server action to a page as it is now: coming back to one, the browser would show what it has. */
export function anew(path: string): never {
  revalidatePath(path)
  redirect(path)
}
