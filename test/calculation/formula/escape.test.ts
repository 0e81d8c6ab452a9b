import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeHtml, escapeLatex, escapeMarkdown } from '../../../src/calculation/formula/index.js';
import { readXml } from './markup.js';

const anyText = fc.string({ unit: 'binary' });

describe('escaping for HTML and MathML', () => {
  it('makes markup harmless, as content and as an attribute', () => {
    expect(escapeHtml('<script>alert("1" & \'2\')</script>')).toBe(
      '&lt;script&gt;alert(&quot;1&quot; &amp; &#39;2&#39;)&lt;/script&gt;',
    );
    fc.assert(
      fc.property(anyText, (text) => {
        const forbidden =
          // eslint-disable-next-line no-control-regex -- the characters XML 1.0 forbids are control characters
          /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u0084\u0086-\u009F\uFFFE\uFFFF]|\p{Surrogate}/gu;
        const kept = text.replace(forbidden, '\uFFFD');
        const { attributes, children } = readXml(`<p title="${escapeHtml(text)}"><b>${escapeHtml(text)}</b></p>`);
        expect([attributes.title, children[0]?.text]).toEqual([kept, kept]);
      }),
    );
  });

  it('replaces what no XML may contain', () => {
    expect(escapeHtml('a\u0000b\uD800c\uFFFFd\te\n')).toBe('a\uFFFDb\uFFFDc\uFFFDd\te\n');
    expect(escapeHtml('😀 η °C')).toBe('😀 η °C');
  });
});

describe('escaping for LaTeX', () => {
  it('makes every special character print itself', () => {
    expect(escapeLatex('50 % of A_1 & {B} #2 $3 ~ ^ \\input{x}')).toBe(
      '50 \\% of A\\_1 \\& \\{B\\} \\#2 \\$3 \\textasciitilde{} \\textasciicircum{} \\textbackslash{}input\\{x\\}',
    );
    expect(escapeLatex('a < b > c | "d"')).toBe("a \\textless{} b \\textgreater{} c \\textbar{} ''d''");
  });

  it('keeps to one line', () => {
    expect(escapeLatex('a\n\nb\r\nc')).toBe('a  b  c');
  });
});

describe('escaping for Markdown', () => {
  it.each([
    ['**bold** _it_ `code`', '\\*\\*bold\\*\\* \\_it\\_ \\`code\\`'],
    ['# heading', '\\# heading'],
    ['- item', '\\- item'],
    ['1. item', '1\\. item'],
    ['[text](javascript:alert(1))', '\\[text\\](javascript:alert(1))'],
    ['![image](x)', '\\!\\[image\\](x)'],
    ['a | b', 'a \\| b'],
    ['<script>', '&lt;script&gt;'],
    ['&lt;', '&amp;lt;'],
    ['$x$', '\\$x\\$'],
    ['a\n# b', 'a \\# b'],
    ['    code', 'code'],
    ['https://a.example www.a.example a@b.example', 'https&#58;//a.example www&#46;a.example a&#64;b.example'],
    ['18.5 °C, probe no. 2 (left)', '18.5 °C, probe no. 2 (left)'],
  ])('%j becomes %j', (text, expected) => {
    expect(escapeMarkdown(text)).toBe(expected);
  });
});
