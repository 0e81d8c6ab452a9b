// What the pages of the reference take from the sources beside doc comments: topics on the first page, functions by the job they serve.
import { Application, CommentTag, Converter, ReflectionKind } from 'typedoc';
import { entryOf, library } from './docs-library.mjs';

/** @param {import('typedoc').Application} app */
export function load(app) {
  app.on(Application.EVENT_BOOTSTRAP_END, () => {
    app.options.setValue('categoryOrder', [...library.TASKS.map(heading), '*']);
  });
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
    for (const reflection of project.getReflectionsByKind(ReflectionKind.Function)) byJob(reflection);
  });
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => firstPage(project));
}

/**
 * A calculation's job stands in its definition.
 * @param {import('typedoc').Reflection} reflection
 */
function byJob(reflection) {
  const task = entryOf(reflection)?.spec.task;
  const signatures = /** @type {import('typedoc').DeclarationReflection} */ (reflection).signatures;
  const comment = reflection.comment ?? signatures?.[0]?.comment;
  if (!task || !comment) return;
  comment.blockTags.push(new CommentTag('@category', [{ kind: 'text', text: heading(task) }]));
}

/** @param {string} task */
function heading(task) {
  return `${task.slice(0, 1).toUpperCase()}${task.slice(1)}`;
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
