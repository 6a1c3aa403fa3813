import type { z } from 'zod';

/** One key of a schema, for a table of the reference. */
interface KeyRow {
  key: string;
  holds: string;
  required: boolean;
  standard: string;
  description: string;
}

/** Tables of a schema's keys: its own, then those of each object inside it, each under the path that leads there. */
export function describeSchema(
  schema: z.ZodType,
  path = '',
): { path: string; description: string; rows: KeyRow[] }[] {
  const object = unwrap(schema);
  if (object.def.type !== 'object') return [];
  const shape = (object as z.ZodObject).shape as Record<string, z.ZodType>;
  const rows = Object.entries(shape).map(([key, field]): KeyRow => {
    const standard = defaultOf(field);
    return {
      key,
      holds: holds(unwrap(field)),
      required: field.def.type !== 'optional' && standard === undefined,
      standard: standard === undefined ? '' : JSON.stringify(standard),
      description: descriptionOf(field),
    };
  });
  const inner = Object.entries(shape).flatMap(([key, field]) => {
    const below = unwrap(field);
    const element = below.def.type === 'array' ? unwrap((below as z.ZodArray).element as z.ZodType) : below;
    const mark = below.def.type === 'array' ? '[]' : '';
    const options = (mark === '' ? undefined : (element.def as Def).options) ?? [element];
    return options.flatMap((option) =>
      describeSchema(option, path === '' ? `${key}${mark}` : `${path}.${key}${mark}`),
    );
  });
  return [{ path, description: object.description ?? '', rows }, ...inner];
}

type Def = {
  type: string;
  innerType?: z.ZodType;
  in?: z.ZodType;
  defaultValue?: unknown;
  options?: z.ZodType[];
};

function unwrap(schema: z.ZodType): z.ZodType {
  const def = schema.def as Def;
  if (['optional', 'default', 'prefault', 'nullable'].includes(def.type)) return unwrap(def.innerType!);
  return def.type === 'pipe' ? unwrap(def.in!) : schema;
}

function defaultOf(schema: z.ZodType): unknown {
  const def = schema.def as Def;
  if (def.type === 'default' || def.type === 'prefault') return def.defaultValue;
  return def.type === 'pipe' ? defaultOf(def.in!) : undefined;
}

function descriptionOf(schema: z.ZodType): string {
  return schema.description ?? unwrap(schema).description ?? '';
}

function holds(schema: z.ZodType): string {
  const def = schema.def as Def & {
    entries?: Record<string, string>;
    values?: unknown[];
    element?: z.ZodType;
    valueType?: z.ZodType;
    catchall?: unknown;
  };
  switch (def.type) {
    case 'enum':
      return Object.values(def.entries!)
        .map((word) => `\`${word}\``)
        .join(' or ');
    case 'literal':
      return def.values!.map(String).join(' or ');
    case 'union':
      return def.options!.map((option) => holds(unwrap(option))).join(', or ');
    case 'array':
      return `list of ${holds(unwrap(def.element!))}`;
    case 'record':
      return `names to ${holds(unwrap(def.valueType!))}`;
    case 'object':
      return `keys (${Object.keys((schema as z.ZodObject).shape).join(', ')})`;
    case 'string':
      return 'text';
    case 'boolean':
      return 'true or false';
    default:
      return def.type;
  }
}
