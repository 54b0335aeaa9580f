/** Promises about "kept": the word appears only when the disk has it, and nothing is lost when the disk says no. */
import { beforeAll, describe, expect, it } from 'vitest';
import { demoOpen, fakeApp } from '../helpers/app.ts';

const model = (app: Awaited<ReturnType<typeof demoOpen>>) => app.runtime.model.getState();

beforeAll(async () => {
  await import('../../src/app/visit-kit.ts');
});

describe('kept', () => {
  it('is said only when the transaction has completed', async () => {
    const app = await demoOpen();
    app.store.trouble = 'slow';
    app.runtime.press('answer:yes');
    await app.pass();
    expect(model(app).step?.step.id).toBe('sign-in-consent');
    expect(model(app).save.state).toBe('keeping');
    expect(model(app).said).not.toContain('They match');
    app.store.letGo();
    await app.pass();
    expect(model(app).save).toMatchObject({ state: 'kept' });
    expect(model(app).said).toContain('They match');
  });

  it.each(['full', 'refused'] as const)(
    'is not said when storage is %s; the visit goes on in memory and a file can be saved',
    async (trouble) => {
      const app = await demoOpen();
      app.store.trouble = trouble;
      app.runtime.press('answer:yes');
      await app.pass();
      app.runtime.press('answer:yes');
      await app.pass();
      const { save, step, said } = model(app);
      expect(step?.step.id).toBe('arches');
      expect(save.state).toBe('memory');
      expect(save.state === 'memory' && save.unsaved).toBeGreaterThan(1);
      expect(save.state === 'memory' && save.why).toMatch(/\./);
      expect(said).toContain('In memory only');
      expect(model(app).trouble).toMatch(/memory/);
      app.runtime.saveFile();
      await app.pass();
      expect(app.files).toHaveLength(1);
      expect(app.files[0]?.text).toContain('sign-in-consent');
      app.store.trouble = 'none';
      await app.pass(60_000);
      expect(model(app).save.state).toBe('kept');
      // What is over is not said any longer.
      expect(model(app).trouble).toBe('');
      const facts = app.disk.facts.get('case-1') ?? [];
      expect(facts.map((f) => (f as { seq: number }).seq)).toEqual(facts.map((_, i) => i + 1));
    },
  );

  it('a fresh start finds the case in the list and opens it where it stood', async () => {
    const app = await demoOpen();
    for (let i = 0; i < 2; i += 1) {
      app.runtime.press('answer:yes');
      await app.pass();
    }
    const next = await app.reload(3_600_000);
    expect(next.runtime.model.getState().cases).toMatchObject([{ code: 'DEMO-01', closed: false }]);
    next.runtime.openCase('case-1');
    await next.pass();
    expect(next.runtime.model.getState()).toMatchObject({ place: 'visit', step: { step: { id: 'arches' } } });
  });

  it('a case with a broken entry is not opened, and the entry is named', async () => {
    const app = await demoOpen();
    app.runtime.press('answer:yes');
    await app.pass();
    const facts = app.disk.facts.get('case-1') as { body: Record<string, unknown> }[];
    facts[2]!.body['answer'] = 7;
    const next = await app.reload();
    next.runtime.openCase('case-1');
    await next.pass();
    expect(next.runtime.model.getState().trouble).toContain('Entry 3 of this case cannot be read (body.answer)');
    expect(next.runtime.model.getState().place).toBe('cases');
  });

  it('a case without code or initials is not begun, and the reason is said', async () => {
    const app = await fakeApp();
    app.runtime.newCase({ code: ' ', clinician: 'KV', assistant: 'BR', demo: false });
    expect(app.runtime.model.getState().trouble).toContain('needs a code');
    expect(app.disk.rows.size).toBe(0);
  });
});
