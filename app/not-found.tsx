import { NotHere } from './_ui/not-here.tsx'

export { NOT_HERE as metadata } from './_ui/not-here.tsx'

export default function NotFound() {
  return <NotHere />
}
