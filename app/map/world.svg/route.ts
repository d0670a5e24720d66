import { worldSheet } from '../../_ui/map/sheet.ts'

/** The outlines of the world as one file, for maps to draw from by reference. */
export function GET(): Response {
  const { frame, land, borders } = worldSheet()
  const body = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${frame.width} ${frame.height}"><path id="land" d="${land}"/><path id="borders" d="${borders}"/></svg>`
  return new Response(body, {
    headers: { 'Content-Type': 'image/svg+xml', 'Cache-Control': 'public, max-age=604800' },
  })
}
