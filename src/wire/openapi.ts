import { z } from 'zod';
import { refusal } from './issue.ts';
import { ROUTES, type Route } from './routes.ts';

const JSON_TYPE = 'application/json';
const REFUSALS: Readonly<Record<string, string>> = {
  400: 'what was asked cannot be used, or nothing is possible; every reason is named',
  404: 'there is nothing of this name',
  413: 'more was sent than is read',
  503: 'too much is being asked at once; ask again later',
  504: 'it took longer than may be taken',
};

/** The interface as an OpenAPI 3.1 document, made from the schemas by which the server reads and answers. */
export function openApi(): object {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Blankwright',
      version: '1',
      description: 'What `blankwright open` answers to programs on the same machine. The server’s address holds a random word, printed when it starts; paths follow it. Lengths are millimetres. What it plans, people cut: knives, clearances and gripper margins are confirmed with the machine’s own manual and the die maker.',
    },
    servers: [{ url: 'http://127.0.0.1:{port}/{word}/api', variables: { port: { default: '20000' }, word: { default: 'word' } } }],
    paths: Object.fromEntries(ROUTES.map((route) => [`/${route.path}`, { [route.method]: operation(route) }])),
    components: { schemas: { Refusal: schemaOf(refusal, 'output') } },
  };
}

function operation({ method, name, summary, ask, reply, ofLibrary }: Route): object {
  const asked = schemaOf(ask, 'input') as { properties?: Record<string, object>; required?: readonly string[] };
  return {
    operationId: name,
    summary,
    tags: [ofLibrary ? 'library' : 'questions'],
    ...(method === 'post' && { requestBody: { required: true, content: { [JSON_TYPE]: { schema: asked } } } }),
    ...(method === 'get' && { parameters: Object.entries(asked.properties ?? {}).map(([field, schema]) => ({ name: field, in: 'query', required: asked.required?.includes(field) ?? false, schema })) }),
    responses: {
      200: { description: summary, content: reply ? { [JSON_TYPE]: { schema: schemaOf(reply, 'output') } } : { 'application/octet-stream': { schema: { type: 'string', format: 'binary' } } } },
      ...Object.fromEntries(Object.entries(REFUSALS).map(([status, description]) => [status, { description, content: { [JSON_TYPE]: { schema: { $ref: '#/components/schemas/Refusal' } } } }])),
    },
  };
}

/** Numbers that come as text in an address are numbers to whoever asks. */
function schemaOf(schema: z.ZodType, io: 'input' | 'output'): object {
  const { $schema: _, ...plain } = z.toJSONSchema(schema, {
    io,
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema._zod.def.type === 'number' && jsonSchema.type === undefined) jsonSchema.type = 'number';
    },
  });
  return plain;
}
