import assert from 'node:assert/strict';
import { parseLayout, references } from '../../../src/layout';
import { paths, sizes, written } from '../support/placed';

const tex = String.raw;

describe('pictures in LaTeX', () => {
  it('are placed by every usual macro', () => {
    const text = tex`
      \includegraphics{a.jpg} \includegraphics[width=3cm]{b} \includegraphics* [width=3cm] {c.png}
      \includegraphics[0,0][10,10]{d.eps} \adjincludegraphics[width=3cm]{e.jpg} \includesvg{f}
      \begin{overpic}[width=5cm]{g.jpg}\end{overpic}
      \includegraphics[width=\textwidth, % a comment
        height=3cm]{%
        h.jpg}`;
    assert.deepEqual(paths(text, 'latex'), ['a.jpg', 'b', 'c.png', 'd.eps', 'e.jpg', 'f', 'g.jpg', 'h.jpg']);
  });

  it('are none in comments, verbatim text, what is switched off and what follows the document', () => {
    const text = tex`
      % \includegraphics{no}
      100\% \includegraphics{yes} \\% \includegraphics{no}
      \verb|\includegraphics{no}| \lstinline{\includegraphics{no}}
      \begin{verbatim} \includegraphics{no} % \end{verbatim}
      \begin{lstlisting}\includegraphics{no}\end{lstlisting}
      \iffalse \ifx\a\b \includegraphics{no} \fi \includegraphics{no} \else \includegraphics{else} \fi
      \end{document} \includegraphics{no}`;
    assert.deepEqual(paths(text, 'latex'), ['yes', 'else']);
  });

  it('have names with braces, quotes and escapes', () => {
    const text = tex`\includegraphics{{a.b}.jpg}\includegraphics{"c d.jpg"}\includegraphics{e\%f.jpg}
      \includegraphics{\detokenize{g_h}.jpg}\includegraphics{ i j.jpg }`;
    assert.deepEqual(paths(text, 'latex'), ['a.b.jpg', 'c d.jpg', 'e%f.jpg', 'g_h.jpg', 'i j.jpg']);
    assert.deepEqual(written(text, 'latex').slice(0, 2), ['{a.b}.jpg', 'c d.jpg']);
  });

  it('have the size that options say, in the units of TeX', () => {
    const text = tex`\includegraphics[width=50mm]{a}\includegraphics[height=72.27pt,width=2in]{b}
      \includegraphics[width=72bp]{c}\includegraphics[scale=.5]{d}
      \includegraphics[width=80mm,height=60mm,keepaspectratio]{e}
      \includegraphics[angle=90,width=50mm]{f}\includegraphics[width=50mm,angle=90]{g}
      \includegraphics[trim=1 2 3 4,clip,width=50mm]{h}\includegraphics[width=3em]{i}`;
    assert.deepEqual(sizes(text, 'latex'), [
      'a: 50 x -',
      'b: 50.8 x 25.4',
      'c: 25.4 x -',
      'd: - x - scale 0.5',
      'e: 80 x 60 fits',
      'f: - x 50',
      'g: 50 x -',
      'h: unknown',
      'i: unknown',
    ]);
  });

  it('take shares of the width where they stand', () => {
    const text = tex`\documentclass[a4paper]{book}\usepackage[left=30mm,right=20mm]{geometry}
      \includegraphics[width=.5\textwidth]{a}
      \begin{minipage}[t]{0.5\textwidth}\includegraphics[width=\linewidth]{b}\end{minipage}
      \parbox{40mm}{\includegraphics[width=0.5\linewidth]{c}}\includegraphics[width=\linewidth]{d}
      \begin{wrapfigure}{r}{60mm}\includegraphics[width=\linewidth]{e}\end{wrapfigure}
      \begin{tabular}{ll}\includegraphics[width=\linewidth]{f}\end{tabular}
      \begin{multicols}{2}\includegraphics[width=\linewidth]{g}\end{multicols}
      \setkeys{Gin}{width=25mm}\includegraphics{h}\includegraphics[width=\paperwidth]{i}`;
    assert.deepEqual(sizes(text, 'latex'), [
      'a: 80 x -',
      'b: 80 x -',
      'c: 20 x -',
      'd: 160 x -',
      'e: 60 x -',
      'f: unknown',
      'g: 78.2 x -',
      'h: 25 x -',
      'i: 210 x -',
    ]);
    assert.equal(sizes(text, 'latex', { textWidth: 100 })[0], 'a: 50 x -', 'settings go before the document');
    const plain = tex`\documentclass{book}\includegraphics[width=.5\textwidth]{a}`;
    assert.deepEqual(sizes(plain, 'latex'), ['a: unknown']);
    const set = tex`\setlength{\textwidth}{12cm}\includegraphics[width=.5\textwidth]{a}`;
    assert.deepEqual(sizes(set, 'latex'), ['a: 60 x -']);
  });

  it('are found through macros of the document', () => {
    const text = tex`
      \newcommand{\plate}[2][x]{\begin{figure}\includegraphics[width=40mm]{plates/#2.jpg}\caption{#1}\end{figure}}
      \NewDocumentCommand{\full}{s o m}{\includegraphics{#3}}
      \def\pair#1#2{\includegraphics[width=30mm]{#2}}
      \plate{01} \plate[a caption]{02} \full*{a.jpg} \full[x]{b.jpg} \pair{words}{c.jpg}`;
    assert.deepEqual(
      references(text, 'latex').map(({ before, path, after }) => before + path + after),
      ['plates/01.jpg', 'plates/02.jpg', 'a.jpg', 'b.jpg', 'c.jpg'],
    );
    assert.equal(sizes(text, 'latex')[0], '01: 40 x -');
  });

  it('may be given to macros that nobody knows', () => {
    const text = tex`\spread[full]{a.jpg}{b.tif} \caption{A picture called c.} \section{cover}`;
    assert.deepEqual(paths(text, 'latex'), ['(a.jpg)', '(b.tif)']);
  });

  it('are sought in the folders that the document names, and those it includes', () => {
    const main = parseLayout(
      tex`\documentclass{book}\usepackage{plates}\graphicspath{{plates/}{more plates/}}
        \newcommand{\p}[1]{\includegraphics{#1}}\input{one}\include{parts/two}\import{deep/}{three.tex}`,
      'latex',
    );
    assert.equal(main.isMain, true);
    assert.deepEqual(
      main.includes.map(({ path }) => path),
      ['book.cls', 'plates.sty', 'one.tex', 'parts/two.tex', 'deep/three.tex'],
    );
    const [used] = references(tex`\p{a}`, 'latex', { inherited: main.passesOn });
    assert.deepEqual([used.path, used.folders], ['a', ['plates/', 'more plates/']]);
  });

  it('are made out in broken text', () => {
    assert.deepEqual(
      paths(tex`{{{ \includegraphics{a} \begin{minipage} } ] \includegraphics[width=3cm`, 'latex'),
      ['a'],
    );
  });
});
