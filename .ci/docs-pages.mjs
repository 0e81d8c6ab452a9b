// What the pages of the reference take from the sources beside doc comments: topics on the first page, functions by the job they serve.
import { CommentTag, Converter, ReflectionKind } from 'typedoc';

/** @param {import('typedoc').Application} app */
export function load(app) {
  app.converter.on(Converter.EVENT_CREATE_DECLARATION, byJob);
  app.converter.on(Converter.EVENT_RESOLVE_END, (context) => firstPage(context.project));
}

/**
 * A calculation's job stands in its definition.
 * @param {import('typedoc').Context} context
 * @param {import('typedoc').DeclarationReflection} reflection
 */
function byJob(context, reflection) {
  if (reflection.kind !== ReflectionKind.Function && reflection.kind !== ReflectionKind.Variable) return;
  const declaration = context.getSymbolFromReflection(reflection)?.declarations?.[0];
  const [, first, rest] = /\btask: '(.)([^']+)'/.exec(declaration?.getText() ?? '') ?? [];
  const comment = reflection.comment ?? reflection.signatures?.[0]?.comment;
  if (!first || !comment) return;
  comment.blockTags.push(new CommentTag('@category', [{ kind: 'text', text: `${first.toUpperCase()}${rest}` }]));
}

/**
 * The README without its heading, which the page has already, and the topics with what each is for.
 * @param {import('typedoc').ProjectReflection} project
 */
function firstPage(project) {
  const [heading, ...readme] = project.readme ?? [];
  if (!heading) return;
  const topics = (project.children ?? []).flatMap((topic) => [
    /** @type {const} */ ({ kind: 'text', text: '\n- ' }),
    /** @type {const} */ ({ kind: 'inline-tag', tag: '@link', text: topic.name, target: topic }),
    /** @type {const} */ ({ kind: 'text', text: ': ' }),
    ...(topic.comment?.summary ?? []).map((part) => ({ ...part, text: part.text.replaceAll('\n', ' ') })),
  ]);
  project.readme = [
    { ...heading, text: heading.text.replace(/^# .*\n/, '') },
    ...readme,
    { kind: 'text', text: '\n\n## Topics\n' },
    ...topics,
  ];
}
