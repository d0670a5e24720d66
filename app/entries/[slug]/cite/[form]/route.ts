import { answerProblem, problemOf, problemOfThrown } from '../../../../_http/problem.ts'
import { wholeNumber } from '../../../../_ui/query.ts'
import { FORMS, isForm } from '../../../../_versions/citation-forms.ts'
import { readCited } from '../../../../_versions/read-cited.ts'
import { words } from '../../../../_words/index.ts'

/** A citation as a file. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ slug: string; form: string }> },
): Promise<Response> {
  try {
    const { slug, form } = await params
    const revision = wholeNumber(new URL(request.url).searchParams.get('revision') ?? undefined)
    const found = isForm(form) ? await readCited(slug, revision) : null
    if (found === null || !isForm(form)) return answerProblem(problemOf(404, words('pages')('notFound.lead')))
    const { write, ending, type } = FORMS[form]
    return new Response(write(found.cited), {
      headers: {
        'Content-Type': type,
        'Content-Disposition': `attachment; filename="${slug}-${found.cited.revision}.${ending}"`,
        'Cache-Control': 'public, max-age=60',
      },
    })
  } catch (thrown) {
    return answerProblem(problemOfThrown(thrown))
  }
}
