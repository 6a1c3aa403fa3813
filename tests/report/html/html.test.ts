import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeHtml, html, trusted } from '../../../pipeline/report/html/html.ts';

describe('html', () => {
  it('escapes values and leaves markup of its own as it is', () => {
    const inner = html`<b>${'<i>'}</b>`;
    expect(html`<p title="${'"x" & y'}">${inner}${['<', html`<br>`]}</p>`.toString()).toBe(
      '<p title="&quot;x&quot; &amp; y"><b>&lt;i&gt;</b>&lt;<br></p>',
    );
  });

  it('writes nothing for null, undefined and false, and 0 for 0', () => {
    expect(html`${null}${undefined}${false}${0}${''}`.toString()).toBe('0');
  });

  it('writes trusted markup as it is', () => {
    expect(html`${trusted('<svg/>')}`.toString()).toBe('<svg/>');
  });

  it('replaces characters that a page can’t hold, and marks that turn text around', () => {
    expect(escapeHtml('a\u0000b\u202ec\ud800d\te\nf')).toBe('a\ufffdb\ufffdc\ufffdd\te\nf');
  });

  it('lets no text start a tag, end an attribute or start an entity', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const escaped = escapeHtml(text);
        expect(escaped).not.toMatch(/[<>"'`]/);
        expect(escaped.replace(/&(amp|lt|gt|quot|#39|#96);/g, '')).not.toContain('&');
      }),
    );
  });
});
