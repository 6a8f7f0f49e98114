<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en_GB">
  <context>
    <name>Peelback</name>
    <message>
      <source>File</source>
      <translation>Datei</translation>
    </message>
    <message>
      <source>Edit</source>
      <translation>Bearbeiten</translation>
    </message>
    <message>
      <source>Peel</source>
      <translation>Abtragen</translation>
    </message>
    <message>
      <source>Part</source>
      <translation>Teil</translation>
    </message>
    <message>
      <source>View</source>
      <translation>Ansicht</translation>
    </message>
    <message>
      <source>Tools</source>
      <translation>Werkzeuge</translation>
    </message>
    <message>
      <source>Talk</source>
      <translation>Vortrag</translation>
    </message>
    <message>
      <source>Help</source>
      <translation>Hilfe</translation>
    </message>
    <message>
      <source>Undo</source>
      <translation>Rückgängig</translation>
    </message>
    <message>
      <source>Redo</source>
      <translation>Wiederholen</translation>
    </message>
    <message>
      <source>Open state…</source>
      <translation>Zustand öffnen …</translation>
    </message>
    <message>
      <source>Open a saved working state</source>
      <translation>Einen gespeicherten Arbeitsstand öffnen</translation>
    </message>
    <message>
      <source>Open state</source>
      <translation>Zustand öffnen</translation>
    </message>
    <message>
      <source>Save state</source>
      <translation>Zustand speichern</translation>
    </message>
    <message>
      <source>Save view, peel and pins</source>
      <translation>Ansicht, Abtragung und Nadeln speichern</translation>
    </message>
    <message>
      <source>Save state as…</source>
      <translation>Zustand speichern unter …</translation>
    </message>
    <message>
      <source>Save state as</source>
      <translation>Zustand speichern unter</translation>
    </message>
    <message>
      <source>Copy picture</source>
      <translation>Bild kopieren</translation>
    </message>
    <message>
      <source>Put the picture, as it is seen, on the clipboard</source>
      <translation>Das Bild, wie es zu sehen ist, in die Zwischenablage legen</translation>
    </message>
    <message>
      <source>Save picture…</source>
      <translation>Bild speichern …</translation>
    </message>
    <message>
      <source>Save the picture at a chosen size</source>
      <translation>Das Bild in gewählter Größe speichern</translation>
    </message>
    <message>
      <source>Save picture</source>
      <translation>Bild speichern</translation>
    </message>
    <message>
      <source>Lab sheet…</source>
      <translation>Arbeitsblatt …</translation>
    </message>
    <message>
      <source>A PDF for the table: cautions, plan, steps with pictures, muscles</source>
      <translation>Ein PDF für den Tisch: Hinweise, Plan, Schritte mit Bildern, Muskeln</translation>
    </message>
    <message>
      <source>Lab sheet</source>
      <translation>Arbeitsblatt</translation>
    </message>
    <message>
      <source>Take-home page…</source>
      <translation>Seite zum Mitnehmen …</translation>
    </message>
    <message>
      <source>One file for a browser, which needs no network</source>
      <translation>Eine Datei für den Browser, die kein Netz braucht</translation>
    </message>
    <message>
      <source>Take-home page</source>
      <translation>Seite zum Mitnehmen</translation>
    </message>
    <message>
      <source>Export meshes…</source>
      <translation>Netze ausgeben …</translation>
    </message>
    <message>
      <source>STL or GLB files by part, stratum or whole</source>
      <translation>STL- oder GLB-Dateien nach Teil, Schicht oder ganz</translation>
    </message>
    <message>
      <source>Export meshes</source>
      <translation>Netze ausgeben</translation>
    </message>
    <message>
      <source>Settings…</source>
      <translation>Einstellungen …</translation>
    </message>
    <message>
      <source>Settings</source>
      <translation>Einstellungen</translation>
    </message>
    <message>
      <source>Quit</source>
      <translation>Beenden</translation>
    </message>
    <message>
      <source>Find a part</source>
      <translation>Teil suchen</translation>
    </message>
    <message>
      <source>Type any name; Enter goes there</source>
      <translation>Einen Namen eingeben; die Eingabetaste führt hin</translation>
    </message>
    <message>
      <source>Let go of the selection</source>
      <translation>Auswahl aufheben</translation>
    </message>
    <message>
      <source>One stratum deeper</source>
      <translation>Eine Schicht tiefer</translation>
    </message>
    <message>
      <source>One stratum back</source>
      <translation>Eine Schicht zurück</translation>
    </message>
    <message>
      <source>Lay all back</source>
      <translation>Alles zurücklegen</translation>
    </message>
    <message>
      <source>Bring all back</source>
      <translation>Alles zurückholen</translation>
    </message>
    <message>
      <source>Nothing hidden, nothing peeled; one undo returns</source>
      <translation>Nichts verborgen, nichts abgetragen; einmal Rückgängig kehrt zurück</translation>
    </message>
    <message>
      <source>Do the next step</source>
      <translation>Nächsten Schritt ausführen</translation>
    </message>
    <message>
      <source>Lay the last step back</source>
      <translation>Letzten Schritt zurücklegen</translation>
    </message>
    <message>
      <source>Steps fold muscles back</source>
      <translation>Schritte klappen Muskeln um</translation>
    </message>
    <message>
      <source>Off: steps take away what they would fold</source>
      <translation>Aus: Schritte nehmen weg, was sie sonst umklappen</translation>
    </message>
    <message>
      <source>Work on both sides</source>
      <translation>An beiden Seiten arbeiten</translation>
    </message>
    <message>
      <source>Work on the left</source>
      <translation>Links arbeiten</translation>
    </message>
    <message>
      <source>Work on the right</source>
      <translation>Rechts arbeiten</translation>
    </message>
    <message>
      <source>Hide</source>
      <translation>Verbergen</translation>
    </message>
    <message>
      <source>Put back</source>
      <translation>Zurücklegen</translation>
    </message>
    <message>
      <source>Lay the selected part back, however it was taken off</source>
      <translation>Das gewählte Teil zurücklegen, wie auch immer es wegkam</translation>
    </message>
    <message>
      <source>Show alone</source>
      <translation>Allein zeigen</translation>
    </message>
    <message>
      <source>See through</source>
      <translation>Durchscheinend</translation>
    </message>
    <message>
      <source>Peek through what covers</source>
      <translation>Durch Deckendes blicken</translation>
    </message>
    <message>
      <source>Looks through without changing what was done</source>
      <translation>Blickt hindurch, ohne das Getane zu ändern</translation>
    </message>
    <message>
      <source>Bring into view</source>
      <translation>Freilegen</translation>
    </message>
    <message>
      <source>Do the fewest steps of the plan that uncover it; one undo takes them back</source>
      <translation>Die wenigsten Schritte des Plans, die es freilegen; einmal Rückgängig nimmt sie zurück</translation>
    </message>
    <message>
      <source>What lies over it</source>
      <translation>Was darüber liegt</translation>
    </message>
    <message>
      <source>Tint and list what lies over it, with shares and depths; Esc ends it</source>
      <translation>Färben und auflisten, was darüber liegt, mit Anteilen und Tiefen; Esc beendet es</translation>
    </message>
    <message>
      <source>Fold back, or lay in place</source>
      <translation>Umklappen oder zurücklegen</translation>
    </message>
    <message>
      <source>Cut the muscle's one end as the plan says and lay it back on its hinge</source>
      <translation>Das eine Ende des Muskels nach Plan durchtrennen und ihn umklappen</translation>
    </message>
    <message>
      <source>Fold a quarter further</source>
      <translation>Ein Viertel weiter klappen</translation>
    </message>
    <message>
      <source>Fold a quarter less</source>
      <translation>Ein Viertel weniger klappen</translation>
    </message>
    <message>
      <source>Go to the part</source>
      <translation>Zum Teil gehen</translation>
    </message>
    <message>
      <source>Select its twin</source>
      <translation>Gegenstück wählen</translation>
    </message>
    <message>
      <source>Select its group</source>
      <translation>Gruppe wählen</translation>
    </message>
    <message>
      <source>Pin a note…</source>
      <translation>Notiz anheften …</translation>
    </message>
    <message>
      <source>Stick a note to the selected part</source>
      <translation>Eine Notiz an das gewählte Teil heften</translation>
    </message>
    <message>
      <source>Pin a note</source>
      <translation>Notiz anheften</translation>
    </message>
    <message>
      <source>From behind</source>
      <translation>Von hinten</translation>
    </message>
    <message>
      <source>Oblique, left</source>
      <translation>Schräg, links</translation>
    </message>
    <message>
      <source>Oblique, right</source>
      <translation>Schräg, rechts</translation>
    </message>
    <message>
      <source>From the left</source>
      <translation>Von links</translation>
    </message>
    <message>
      <source>From the right</source>
      <translation>Von rechts</translation>
    </message>
    <message>
      <source>From above</source>
      <translation>Von oben</translation>
    </message>
    <message>
      <source>From below</source>
      <translation>Von unten</translation>
    </message>
    <message>
      <source>From the front</source>
      <translation>Von vorn</translation>
    </message>
    <message>
      <source>Return to the fixed view</source>
      <translation>Zur festen Ansicht zurück</translation>
    </message>
    <message>
      <source>Back to the last fixed view</source>
      <translation>Zurück zur letzten festen Ansicht</translation>
    </message>
    <message>
      <source>Free orbit</source>
      <translation>Freies Drehen</translation>
    </message>
    <message>
      <source>Off: a gentle orbit about the fixed view</source>
      <translation>Aus: sanftes Drehen um die feste Ansicht</translation>
    </message>
    <message>
      <source>Donor: standing, as in anatomy</source>
      <translation>Körperspende: stehend, wie in der Anatomie üblich</translation>
    </message>
    <message>
      <source>Where I stand: the donor prone on a table, with the upright picture beside</source>
      <translation>Wo ich stehe: Körperspende in Bauchlage auf dem Tisch, das aufrechte Bild daneben</translation>
    </message>
    <message>
      <source>Donor: prone, from the left side</source>
      <translation>Körperspende: Bauchlage, von links</translation>
    </message>
    <message>
      <source>Donor: prone, from the right side</source>
      <translation>Körperspende: Bauchlage, von rechts</translation>
    </message>
    <message>
      <source>Donor: prone, from the head end</source>
      <translation>Körperspende: Bauchlage, vom Kopfende</translation>
    </message>
    <message>
      <source>Donor: prone, from the foot end</source>
      <translation>Körperspende: Bauchlage, vom Fußende</translation>
    </message>
    <message>
      <source>Turn left</source>
      <translation>Nach links drehen</translation>
    </message>
    <message>
      <source>Turn right</source>
      <translation>Nach rechts drehen</translation>
    </message>
    <message>
      <source>Turn up</source>
      <translation>Nach oben drehen</translation>
    </message>
    <message>
      <source>Turn down</source>
      <translation>Nach unten drehen</translation>
    </message>
    <message>
      <source>Move the picture left</source>
      <translation>Bild nach links schieben</translation>
    </message>
    <message>
      <source>Move the picture right</source>
      <translation>Bild nach rechts schieben</translation>
    </message>
    <message>
      <source>Move the picture up</source>
      <translation>Bild nach oben schieben</translation>
    </message>
    <message>
      <source>Move the picture down</source>
      <translation>Bild nach unten schieben</translation>
    </message>
    <message>
      <source>Closer</source>
      <translation>Näher</translation>
    </message>
    <message>
      <source>Further</source>
      <translation>Weiter weg</translation>
    </message>
    <message>
      <source>Show both sides</source>
      <translation>Beide Seiten zeigen</translation>
    </message>
    <message>
      <source>Show the left side only</source>
      <translation>Nur die linke Seite zeigen</translation>
    </message>
    <message>
      <source>Show the right side only</source>
      <translation>Nur die rechte Seite zeigen</translation>
    </message>
    <message>
      <source>Dissected beside whole</source>
      <translation>Präpariert neben ganz</translation>
    </message>
    <message>
      <source>Neighbours at the edge</source>
      <translation>Nachbarn am Rand</translation>
    </message>
    <message>
      <source>Deltoid, gluteal and other muscles that do not belong to the back</source>
      <translation>Deltamuskel, Gesäßmuskeln und andere, die nicht zum Rücken gehören</translation>
    </message>
    <message>
      <source>Look: by kind</source>
      <translation>Aussehen: nach Art</translation>
    </message>
    <message>
      <source>Look: as fixed</source>
      <translation>Aussehen: wie fixiert</translation>
    </message>
    <message>
      <source>Look: high contrast</source>
      <translation>Aussehen: hoher Kontrast</translation>
    </message>
    <message>
      <source>Next look</source>
      <translation>Nächstes Aussehen</translation>
    </message>
    <message>
      <source>Dark window</source>
      <translation>Dunkles Fenster</translation>
    </message>
    <message>
      <source>Latin names first</source>
      <translation>Lateinische Namen zuerst</translation>
    </message>
    <message>
      <source>Tree, labels, captions and search name parts in Latin</source>
      <translation>Baum, Beschriftung, Legenden und Suche nennen Teile lateinisch</translation>
    </message>
    <message>
      <source>Larger letters</source>
      <translation>Größere Schrift</translation>
    </message>
    <message>
      <source>Smaller letters</source>
      <translation>Kleinere Schrift</translation>
    </message>
    <message>
      <source>Letters at 100 %</source>
      <translation>Schrift auf 100 %</translation>
    </message>
    <message>
      <source>Parts and caption</source>
      <translation>Teile und Legende</translation>
    </message>
    <message>
      <source>Full screen</source>
      <translation>Ganzer Bildschirm</translation>
    </message>
    <message>
      <source>Labels</source>
      <translation>Beschriftung</translation>
    </message>
    <message>
      <source>Numbers in place of names</source>
      <translation>Nummern statt Namen</translation>
    </message>
    <message>
      <source>More labels</source>
      <translation>Mehr Beschriftung</translation>
    </message>
    <message>
      <source>Fewer labels</source>
      <translation>Weniger Beschriftung</translation>
    </message>
    <message>
      <source>Measure</source>
      <translation>Messen</translation>
    </message>
    <message>
      <source>Click two points; teaching only, not for needle or surgical guidance</source>
      <translation>Zwei Punkte anklicken; nur zur Lehre, nicht zur Führung von Nadel oder Messer</translation>
    </message>
    <message>
      <source>Measure along the surface</source>
      <translation>Entlang der Oberfläche messen</translation>
    </message>
    <message>
      <source>Clear the measure</source>
      <translation>Messung löschen</translation>
    </message>
    <message>
      <source>Probe at…</source>
      <translation>Sondieren bei …</translation>
    </message>
    <message>
      <source>The layers under a place given by level, distance and side; teaching only</source>
      <translation>Die Schichten unter einer Stelle nach Höhe, Abstand und Seite; nur zur Lehre</translation>
    </message>
    <message>
      <source>Probe at</source>
      <translation>Sondieren bei</translation>
    </message>
    <message>
      <source>Landmarks on the skin</source>
      <translation>Landmarken auf der Haut</translation>
    </message>
    <message>
      <source>Palpable landmarks and levels</source>
      <translation>Tastbare Landmarken und Höhen</translation>
    </message>
    <message>
      <source>Pins and notes…</source>
      <translation>Nadeln und Notizen …</translation>
    </message>
    <message>
      <source>Pins and notes</source>
      <translation>Nadeln und Notizen</translation>
    </message>
    <message>
      <source>Section</source>
      <translation>Schnitt</translation>
    </message>
    <message>
      <source>Cut the model flat, with named areas beside it</source>
      <translation>Das Modell eben schneiden, benannte Flächen daneben</translation>
    </message>
    <message>
      <source>Section one level up</source>
      <translation>Schnitt eine Höhe hinauf</translation>
    </message>
    <message>
      <source>Section one level down</source>
      <translation>Schnitt eine Höhe hinab</translation>
    </message>
    <message>
      <source>Section in the next plane</source>
      <translation>Schnitt in der nächsten Ebene</translation>
    </message>
    <message>
      <source>Keep the other half</source>
      <translation>Die andere Hälfte behalten</translation>
    </message>
    <message>
      <source>Cut the whole, not what is left</source>
      <translation>Das Ganze schneiden, nicht den Rest</translation>
    </message>
    <message>
      <source>Shows in the section what the dissection took off, too</source>
      <translation>Zeigt im Schnitt auch, was die Präparation wegnahm</translation>
    </message>
    <message>
      <source>Save the section…</source>
      <translation>Schnitt speichern …</translation>
    </message>
    <message>
      <source>Save the section</source>
      <translation>Schnitt speichern</translation>
    </message>
    <message>
      <source>Rehearse a cut</source>
      <translation>Schnittführung üben</translation>
    </message>
    <message>
      <source>Draw a line on skin or muscle: how deep, how near, what it would lose</source>
      <translation>Eine Linie auf Haut oder Muskel ziehen: wie tief, wie nah, was verloren ginge</translation>
    </message>
    <message>
      <source>Add the place under the pointer</source>
      <translation>Stelle unter dem Zeiger hinzufügen</translation>
    </message>
    <message>
      <source>Try the cut again</source>
      <translation>Schnitt noch einmal versuchen</translation>
    </message>
    <message>
      <source>What goes wrong</source>
      <translation>Was schiefgeht</translation>
    </message>
    <message>
      <source>The commonest mistakes of the present step, shown on the model</source>
      <translation>Die häufigsten Fehler dieses Schritts, am Modell gezeigt</translation>
    </message>
    <message>
      <source>Scenes of the talk</source>
      <translation>Szenen des Vortrags</translation>
    </message>
    <message>
      <source>Keep this view as a scene</source>
      <translation>Diese Ansicht als Szene behalten</translation>
    </message>
    <message>
      <source>A scene after the chosen one, with all that is peeled, picked and seen</source>
      <translation>Eine Szene nach der gewählten, mit allem Abgetragenen, Gewählten und Gesehenen</translation>
    </message>
    <message>
      <source>Give the scene this view</source>
      <translation>Der Szene diese Ansicht geben</translation>
    </message>
    <message>
      <source>New talk</source>
      <translation>Neuer Vortrag</translation>
    </message>
    <message>
      <source>Open talk…</source>
      <translation>Vortrag öffnen …</translation>
    </message>
    <message>
      <source>Open talk</source>
      <translation>Vortrag öffnen</translation>
    </message>
    <message>
      <source>Save talk</source>
      <translation>Vortrag speichern</translation>
    </message>
    <message>
      <source>Save talk as…</source>
      <translation>Vortrag speichern unter …</translation>
    </message>
    <message>
      <source>Save talk as</source>
      <translation>Vortrag speichern unter</translation>
    </message>
    <message>
      <source>Open the sample talk</source>
      <translation>Beispielvortrag öffnen</translation>
    </message>
    <message>
      <source>Present…</source>
      <translation>Vorführen …</translation>
    </message>
    <message>
      <source>Cautions and room check first, then full screen</source>
      <translation>Zuerst Hinweise und Saalprüfung, dann ganzer Bildschirm</translation>
    </message>
    <message>
      <source>Present</source>
      <translation>Vorführen</translation>
    </message>
    <message>
      <source>Present from this scene…</source>
      <translation>Ab dieser Szene vorführen …</translation>
    </message>
    <message>
      <source>Present from this scene</source>
      <translation>Ab dieser Szene vorführen</translation>
    </message>
    <message>
      <source>Rapid review, both sides</source>
      <translation>Schnelldurchgang, beide Seiten</translation>
    </message>
    <message>
      <source>Skin to cord in about a minute, each part named; Space pauses</source>
      <translation>Von der Haut zum Rückenmark in etwa einer Minute, jedes Teil benannt; Leertaste hält an</translation>
    </message>
    <message>
      <source>Rapid review, left</source>
      <translation>Schnelldurchgang, links</translation>
    </message>
    <message>
      <source>Rapid review, right</source>
      <translation>Schnelldurchgang, rechts</translation>
    </message>
    <message>
      <source>Keys and how to begin</source>
      <translation>Tasten und erste Schritte</translation>
    </message>
    <message>
      <source>Guided tour of the back lab</source>
      <translation>Führung durch den Rückenkurs</translation>
    </message>
    <message>
      <source>Cautions</source>
      <translation>Hinweise</translation>
    </message>
    <message>
      <source>Where the log file is</source>
      <translation>Wo die Protokolldatei liegt</translation>
    </message>
    <message>
      <source>About Peelback</source>
      <translation>Über Peelback</translation>
    </message>
    <message>
      <source>Pull the &lt;b&gt;handle of the depth rail&lt;/b&gt; down: the back peels, stratum by stratum, on the left, the right or both. Click a &lt;b&gt;band&lt;/b&gt; to take one stratum out and to put it back.</source>
      <translation>Den &lt;b&gt;Griff der Tiefenleiste&lt;/b&gt; nach unten ziehen: Der Rücken wird Schicht um Schicht abgetragen, links, rechts oder beidseits. Ein Klick auf ein &lt;b&gt;Band&lt;/b&gt; nimmt eine Schicht heraus und legt sie zurück.</translation>
    </message>
    <message>
      <source>The &lt;b&gt;step line&lt;/b&gt; under the model holds the dissection in order. It follows what you peel, and says why a step may not be done yet.</source>
      <translation>Die &lt;b&gt;Schrittzeile&lt;/b&gt; unter dem Modell hält die Präparation in der Reihenfolge. Sie folgt dem Abtragen und sagt, warum ein Schritt noch nicht an der Reihe ist.</translation>
    </message>
    <message>
      <source>&lt;b&gt;Point&lt;/b&gt; at a part to see what it is, &lt;b&gt;click&lt;/b&gt; to pick it. Type any name to find one.</source>
      <translation>Auf ein Teil &lt;b&gt;zeigen&lt;/b&gt;, um zu sehen, was es ist; &lt;b&gt;klicken&lt;/b&gt;, um es zu wählen. Jeder Name lässt sich suchen.</translation>
    </message>
    <message>
      <source>&lt;b&gt;Looking&lt;/b&gt; (see through, alone, peek) never changes what you have &lt;b&gt;done&lt;/b&gt;. The strip above the model lists what is hidden; &lt;b&gt;A&lt;/b&gt; brings all back and one undo returns.</source>
      <translation>&lt;b&gt;Schauen&lt;/b&gt; (durchscheinend, allein, hindurchblicken) ändert nie, was &lt;b&gt;getan&lt;/b&gt; ist. Der Streifen über dem Modell nennt das Verborgene; &lt;b&gt;A&lt;/b&gt; holt alles zurück, einmal Rückgängig kehrt wieder.</translation>
    </message>
    <message>
      <source>&lt;b&gt;1&lt;/b&gt; to &lt;b&gt;8&lt;/b&gt; are fixed views; &lt;b&gt;Home&lt;/b&gt; returns to the last one. Drag to turn a little about it, with Shift or the middle button to move, wheel to come closer. Free orbit is in the View menu.</source>
      <translation>&lt;b&gt;1&lt;/b&gt; bis &lt;b&gt;8&lt;/b&gt; sind feste Ansichten; &lt;b&gt;Pos1&lt;/b&gt; kehrt zur letzten zurück. Ziehen dreht ein wenig, mit Umschalt oder mittlerer Taste wird geschoben, das Rad holt näher. Freies Drehen steht im Menü Ansicht.</translation>
    </message>
    <message>
      <source>The body stands, arms a little away from the trunk; a donor lies prone.</source>
      <translation>Der Körper steht, die Arme etwas vom Rumpf abgespreizt; eine Körperspende liegt auf dem Bauch.</translation>
    </message>
    <message>
      <source>skin</source>
      <translation>Haut</translation>
    </message>
    <message>
      <source>superficial fascia</source>
      <translation>Unterhautgewebe</translation>
    </message>
    <message>
      <source>first sheet</source>
      <translation>erste Lage</translation>
    </message>
    <message>
      <source>second sheet</source>
      <translation>zweite Lage</translation>
    </message>
    <message>
      <source>intermediate</source>
      <translation>mittlere Lage</translation>
    </message>
    <message>
      <source>fascia, splenii</source>
      <translation>Faszie, Splenii</translation>
    </message>
    <message>
      <source>erector spinae</source>
      <translation>Erector spinae</translation>
    </message>
    <message>
      <source>transversospinales</source>
      <translation>Transversospinales</translation>
    </message>
    <message>
      <source>segmental</source>
      <translation>segmental</translation>
    </message>
    <message>
      <source>ligaments, bones</source>
      <translation>Bänder, Knochen</translation>
    </message>
    <message>
      <source>canal</source>
      <translation>Kanal</translation>
    </message>
    <message>
      <source>By kind</source>
      <translation>Nach Art</translation>
    </message>
    <message>
      <source>As fixed</source>
      <translation>Wie fixiert</translation>
    </message>
    <message>
      <source>High contrast</source>
      <translation>Hoher Kontrast</translation>
    </message>
    <message>
      <source>Peelback</source>
      <translation>Peelback</translation>
    </message>
    <message>
      <source>Contrast</source>
      <translation>Kontrast</translation>
    </message>
    <message>
      <source>Compare</source>
      <translation>Vergleich</translation>
    </message>
    <message>
      <source>Marks</source>
      <translation>Marken</translation>
    </message>
    <message>
      <source>Label density</source>
      <translation>Dichte der Beschriftung</translation>
    </message>
    <message>
      <source>How many labels</source>
      <translation>Wie viel Beschriftung</translation>
    </message>
    <message>
      <source>Depth</source>
      <translation>Tiefe</translation>
    </message>
    <message>
      <source>Work on left</source>
      <translation>Links arbeiten</translation>
    </message>
    <message>
      <source>Rail and steps work on left</source>
      <translation>Leiste und Schritte wirken links</translation>
    </message>
    <message>
      <source>Left</source>
      <translation>Links</translation>
    </message>
    <message>
      <source>Work on both</source>
      <translation>Beidseits arbeiten</translation>
    </message>
    <message>
      <source>Rail and steps work on both</source>
      <translation>Leiste und Schritte wirken beidseits</translation>
    </message>
    <message>
      <source>Both</source>
      <translation>Beide</translation>
    </message>
    <message>
      <source>Work on right</source>
      <translation>Rechts arbeiten</translation>
    </message>
    <message>
      <source>Rail and steps work on right</source>
      <translation>Leiste und Schritte wirken rechts</translation>
    </message>
    <message>
      <source>Right</source>
      <translation>Rechts</translation>
    </message>
    <message>
      <source>typical thickness, not to measure</source>
      <translation>übliche Dicke, kein Maß</translation>
    </message>
    <message>
      <source>Depth rail</source>
      <translation>Tiefenleiste</translation>
    </message>
    <message>
      <source>What is hidden</source>
      <translation>Was verborgen ist</translation>
    </message>
    <message>
      <source>Nothing is hidden</source>
      <translation>Nichts ist verborgen</translation>
    </message>
    <message>
      <source>The model</source>
      <translation>Das Modell</translation>
    </message>
    <message>
      <source>Preparing the picture …</source>
      <translation>Das Bild wird vorbereitet …</translation>
    </message>
    <message>
      <source>Building the model</source>
      <translation>Das Modell wird gebaut</translation>
    </message>
    <message>
      <source>Step line</source>
      <translation>Schrittzeile</translation>
    </message>
    <message>
      <source>What to do at this step</source>
      <translation>Was bei diesem Schritt zu tun ist</translation>
    </message>
    <message>
      <source>The plan appears when the model is ready.</source>
      <translation>Der Plan erscheint, wenn das Modell fertig ist.</translation>
    </message>
    <message>
      <source>Do this step</source>
      <translation>Ausführen</translation>
    </message>
    <message>
      <source>Do the step although the plan does not allow it yet</source>
      <translation>Den Schritt ausführen, obwohl der Plan ihn noch nicht erlaubt</translation>
    </message>
    <message>
      <source>Anyway</source>
      <translation>Trotzdem</translation>
    </message>
    <message>
      <source>Lay this step back, and every step that needs it</source>
      <translation>Diesen Schritt zurücklegen und jeden, der ihn braucht</translation>
    </message>
    <message>
      <source>Lay back</source>
      <translation>Zurücklegen</translation>
    </message>
    <message>
      <source>How far it is folded back</source>
      <translation>Wie weit es umgeklappt ist</translation>
    </message>
    <message>
      <source>Fold it back so far; stop midway to look beneath</source>
      <translation>So weit umklappen; auf halbem Weg anhalten, um darunter zu sehen</translation>
    </message>
    <message>
      <source>Find a part: English, Latin, synonym…</source>
      <translation>Teil suchen: englisch, lateinisch, Synonym …</translation>
    </message>
    <message>
      <source>Keep this view as a scene after the chosen one</source>
      <translation>Diese Ansicht als Szene nach der gewählten behalten</translation>
    </message>
    <message>
      <source>Keep view</source>
      <translation>Behalten</translation>
    </message>
    <message>
      <source>Give the chosen scene this view</source>
      <translation>Der gewählten Szene diese Ansicht geben</translation>
    </message>
    <message>
      <source>New view</source>
      <translation>Neue Ansicht</translation>
    </message>
    <message>
      <source>Duplicate the chosen scene</source>
      <translation>Die gewählte Szene verdoppeln</translation>
    </message>
    <message>
      <source>Double</source>
      <translation>Doppeln</translation>
    </message>
    <message>
      <source>Delete the chosen scene</source>
      <translation>Die gewählte Szene löschen</translation>
    </message>
    <message>
      <source>Delete the chosen scene (undo brings it back)</source>
      <translation>Die gewählte Szene löschen (Rückgängig holt sie zurück)</translation>
    </message>
    <message>
      <source>Delete</source>
      <translation>Löschen</translation>
    </message>
    <message>
      <source>Move the scene up</source>
      <translation>Szene nach oben</translation>
    </message>
    <message>
      <source>Move the scene down</source>
      <translation>Szene nach unten</translation>
    </message>
    <message>
      <source>Undo the last change of the talk</source>
      <translation>Letzte Änderung des Vortrags zurücknehmen</translation>
    </message>
    <message>
      <source>Do again what was undone</source>
      <translation>Zurückgenommenes wieder tun</translation>
    </message>
    <message>
      <source>Title of the scene</source>
      <translation>Titel der Szene</translation>
    </message>
    <message>
      <source>Title</source>
      <translation>Titel</translation>
    </message>
    <message>
      <source>Short line for the hall</source>
      <translation>Kurze Zeile für den Saal</translation>
    </message>
    <message>
      <source>Notes for the speaker</source>
      <translation>Notizen für den Vortragenden</translation>
    </message>
    <message>
      <source>Parts by stratum and region</source>
      <translation>Teile nach Schicht und Gegend</translation>
    </message>
    <message>
      <source>What lies over it, from outside inward</source>
      <translation>Was darüber liegt, von außen nach innen</translation>
    </message>
    <message>
      <source>Lies over it</source>
      <translation>Liegt darüber</translation>
    </message>
    <message>
      <source>Hides</source>
      <translation>Verdeckt</translation>
    </message>
    <message>
      <source>Close the list of what lies over it</source>
      <translation>Liste des Darüberliegenden schließen</translation>
    </message>
    <message>
      <source>Caption</source>
      <translation>Legende</translation>
    </message>
    <message>
      <source>Hide the part</source>
      <translation>Das Teil verbergen</translation>
    </message>
    <message>
      <source>Alone</source>
      <translation>Allein</translation>
    </message>
    <message>
      <source>Show it with nothing else</source>
      <translation>Ohne alles andere zeigen</translation>
    </message>
    <message>
      <source>Make it see-through</source>
      <translation>Durchscheinend machen</translation>
    </message>
    <message>
      <source>Lay it back, however it was taken off</source>
      <translation>Zurücklegen, wie auch immer es wegkam</translation>
    </message>
    <message>
      <source>Into view</source>
      <translation>Freilegen</translation>
    </message>
    <message>
      <source>Do the fewest steps that uncover it</source>
      <translation>Die wenigsten Schritte, die es freilegen</translation>
    </message>
    <message>
      <source>Over it</source>
      <translation>Darüber</translation>
    </message>
    <message>
      <source>Tint and list what lies over it</source>
      <translation>Färben und auflisten, was darüber liegt</translation>
    </message>
    <message>
      <source>Peek</source>
      <translation>Blick</translation>
    </message>
    <message>
      <source>Look through what covers it, changing nothing</source>
      <translation>Durch das Deckende blicken, ohne etwas zu ändern</translation>
    </message>
    <message>
      <source>Go to</source>
      <translation>Hin</translation>
    </message>
    <message>
      <source>Let the camera go there</source>
      <translation>Die Kamera dorthin führen</translation>
    </message>
    <message>
      <source>Teaching model: not for needle or surgical guidance.</source>
      <translation>Lehrmodell: nicht zur Führung von Nadel oder Messer.</translation>
    </message>
    <message>
      <source>&amp;Window</source>
      <translation>&amp;Fenster</translation>
    </message>
    <message>
      <source>Window</source>
      <translation>Fenster</translation>
    </message>
    <message>
      <source>Light</source>
      <translation>Hell</translation>
    </message>
    <message>
      <source>Dark</source>
      <translation>Dunkel</translation>
    </message>
    <message>
      <source>&amp;Look of tissues</source>
      <translation>&amp;Aussehen der Gewebe</translation>
    </message>
    <message>
      <source>Look of tissues</source>
      <translation>Aussehen der Gewebe</translation>
    </message>
    <message>
      <source>&amp;Detail of the model</source>
      <translation>&amp;Genauigkeit des Modells</translation>
    </message>
    <message>
      <source>Detail of the model</source>
      <translation>Genauigkeit des Modells</translation>
    </message>
    <message>
      <source>Full</source>
      <translation>Voll</translation>
    </message>
    <message>
      <source>Preview</source>
      <translation>Vorschau</translation>
    </message>
    <message>
      <source>Preview (quicker, coarser)</source>
      <translation>Vorschau (schneller, gröber)</translation>
    </message>
    <message>
      <source>&amp;Spelling</source>
      <translation>&amp;Rechtschreibung</translation>
    </message>
    <message>
      <source>Spelling</source>
      <translation>Englische Rechtschreibung</translation>
    </message>
    <message>
      <source>British</source>
      <translation>Britisch</translation>
    </message>
    <message>
      <source>American</source>
      <translation>Amerikanisch</translation>
    </message>
    <message>
      <source>L&amp;anguage</source>
      <translation>&amp;Sprache</translation>
    </message>
    <message>
      <source>Language</source>
      <translation>Sprache</translation>
    </message>
    <message>
      <source>As the computer</source>
      <translation>Wie der Rechner</translation>
    </message>
    <message>
      <source>English</source>
      <translation>English</translation>
    </message>
    <message>
      <source>Deutsch</source>
      <translation>Deutsch</translation>
    </message>
    <message>
      <source>L&amp;etters</source>
      <translation>S&amp;chrift</translation>
    </message>
    <message>
      <source>Letters, per cent</source>
      <translation>Schrift, Prozent</translation>
    </message>
    <message>
      <source>Latin name first</source>
      <translation>Lateinischer Name zuerst</translation>
    </message>
    <message>
      <source>Begin where the last session ended</source>
      <translation>Beginnen, wo die letzte Sitzung endete</translation>
    </message>
    <message>
      <source>No movement: views change at once</source>
      <translation>Keine Bewegung: Ansichten wechseln sofort</translation>
    </message>
    <message>
      <source>Detail takes effect at the next start.</source>
      <translation>Die Genauigkeit gilt ab dem nächsten Start.</translation>
    </message>
    <message>
      <source>Reset all</source>
      <translation>Alles zurücksetzen</translation>
    </message>
    <message>
      <source>Close</source>
      <translation>Schließen</translation>
    </message>
    <message>
      <source>Usual sizes</source>
      <translation>Übliche Größen</translation>
    </message>
    <message>
      <source>Own size</source>
      <translation>Eigene Größe</translation>
    </message>
    <message>
      <source>Width</source>
      <translation>Breite</translation>
    </message>
    <message>
      <source>Width in pixels</source>
      <translation>Breite in Pixeln</translation>
    </message>
    <message>
      <source>Height</source>
      <translation>Höhe</translation>
    </message>
    <message>
      <source>Height in pixels</source>
      <translation>Höhe in Pixeln</translation>
    </message>
    <message>
      <source>Save as…</source>
      <translation>Speichern unter …</translation>
    </message>
    <message>
      <source>Cancel</source>
      <translation>Abbrechen</translation>
    </message>
    <message>
      <source>Pins</source>
      <translation>Nadeln</translation>
    </message>
    <message>
      <source>Words of the pin</source>
      <translation>Worte der Nadel</translation>
    </message>
    <message>
      <source>No pins yet: pick a place and press Ctrl+P</source>
      <translation>Noch keine Nadeln: eine Stelle wählen und Strg+P drücken</translation>
    </message>
    <message>
      <source>Change</source>
      <translation>Ändern</translation>
    </message>
    <message>
      <source>Take out</source>
      <translation>Entfernen</translation>
    </message>
    <message>
      <source>Go there</source>
      <translation>Dorthin</translation>
    </message>
    <message>
      <source>Clear the search</source>
      <translation>Suche leeren</translation>
    </message>
    <message>
      <source>Saved {file}</source>
      <translation>Gespeichert: {file}</translation>
    </message>
    <message>
      <source>Undone: {what}</source>
      <translation>Rückgängig: {what}</translation>
    </message>
    <message>
      <source>Done again: {what}</source>
      <translation>Wiederholt: {what}</translation>
    </message>
    <message>
      <source>Working out how to fold {titles} …</source>
      <translation>Umklappen wird berechnet: {titles} …</translation>
    </message>
    <message>
      <source>It cannot be folded: {why}</source>
      <translation>Lässt sich nicht umklappen: {why}</translation>
    </message>
    <message>
      <source>Steps now fold muscles back, where the plan folds them.</source>
      <translation>Schritte klappen Muskeln jetzt um, wo der Plan es tut.</translation>
    </message>
    <message>
      <source>Steps now take muscles away, where the plan folds them.</source>
      <translation>Schritte nehmen Muskeln jetzt weg, wo der Plan sie umklappt.</translation>
    </message>
    <message>
      <source>{count} parts</source>
      <translation>{count} Teile</translation>
    </message>
    <message>
      <source>Hidden: {names}. The strip above the model brings it back.</source>
      <translation>Verborgen: {names}. Die Leiste über dem Modell holt es zurück.</translation>
    </message>
    <message>
      <source>{title} belongs to no group.</source>
      <translation>{title} gehört zu keiner Gruppe.</translation>
    </message>
    <message>
      <source>{title} is not in view: S puts it back, P shows it through.</source>
      <translation>{title} ist nicht zu sehen: S legt es zurück, P lässt hindurchblicken.</translation>
    </message>
    <message>
      <source>{title} may be covered: D brings it into view, W says what lies over it.</source>
      <translation>{title} ist vielleicht bedeckt: D legt es frei, W sagt, was darüber liegt.</translation>
    </message>
    <message>
      <source>Done: {what}</source>
      <translation>Getan: {what}</translation>
    </message>
    <message>
      <source>Laid back: {what}</source>
      <translation>Zurückgelegt: {what}</translation>
    </message>
    <message>
      <source>Keep: {names}.</source>
      <translation>Schonen: {names}.</translation>
    </message>
    <message>
      <source>at {place}</source>
      <translation>bei {place}</translation>
    </message>
    <message>
      <source>{title}: {count} more …  (Esc stops)</source>
      <translation>{title}: noch {count} …  (Esc hält an)</translation>
    </message>
    <message>
      <source>Writing {file} … it takes up to a minute; go on working.</source>
      <translation>{file} wird geschrieben … bis zu einer Minute; Sie können weiterarbeiten.</translation>
    </message>
    <message>
      <source>1 file</source>
      <translation>1 Datei</translation>
    </message>
    <message>
      <source>{count} files</source>
      <translation>{count} Dateien</translation>
    </message>
    <message>
      <source>Written: {what} in {folder}</source>
      <translation>Geschrieben: {what} in {folder}</translation>
    </message>
    <message>
      <source>Written: {what}</source>
      <translation>Geschrieben: {what}</translation>
    </message>
    <message>
      <source>Kept as scene {n}, “{title}”.</source>
      <translation>Behalten als Szene {n}, „{title}“.</translation>
    </message>
    <message>
      <source>Scene {n} shows this view now.</source>
      <translation>Szene {n} zeigt jetzt diese Ansicht.</translation>
    </message>
    <message>
      <source>“{title}” has changes that are not saved.</source>
      <translation>„{title}“ hat Änderungen, die nicht gespeichert sind.</translation>
    </message>
    <message>
      <source>Opened {file}, {count} scenes. F5 presents it.</source>
      <translation>{file} geöffnet, {count} Szenen. F5 führt vor.</translation>
    </message>
    <message>
      <source>Deleted “{title}”. Undo in the talk brings it back.</source>
      <translation>„{title}“ gelöscht. Rückgängig im Vortrag holt es zurück.</translation>
    </message>
    <message>
      <source>Undone in the talk: {what}</source>
      <translation>Im Vortrag rückgängig: {what}</translation>
    </message>
    <message>
      <source>Done again in the talk: {what}</source>
      <translation>Im Vortrag wiederholt: {what}</translation>
    </message>
    <message>
      <source>Not kept: {why}.</source>
      <translation>Nicht behalten: {why}.</translation>
    </message>
    <message>
      <source>No review: {why}.</source>
      <translation>Kein Schnelldurchgang: {why}.</translation>
    </message>
    <message>
      <source>Note on {title}:</source>
      <translation>Notiz zu {title}:</translation>
    </message>
    <message>
      <source> No way along one part joins the points.</source>
      <translation> Kein Weg über einen Teil verbindet die Punkte.</translation>
    </message>
    <message>
      <source>Click two points.</source>
      <translation>Zwei Punkte anklicken.</translation>
    </message>
    <message>
      <source>Letters at {share}</source>
      <translation>Schrift auf {share}</translation>
    </message>
    <message>
      <source>picked</source>
      <translation>gewählt</translation>
    </message>
    <message>
      <source>under the pointer</source>
      <translation>unter dem Zeiger</translation>
    </message>
    <message>
      <source>No part</source>
      <translation>Kein Teil</translation>
    </message>
    <message>
      <source>Type any name in the search field above to find one.</source>
      <translation>Einen Namen ins Suchfeld oben schreiben, um einen Teil zu finden.</translation>
    </message>
    <message>
      <source>Sources</source>
      <translation>Quellen</translation>
    </message>
    <message>
      <source>Point at a part to see what it is; click to pick it.</source>
      <translation>Auf einen Teil zeigen sagt, was er ist; ein Klick wählt ihn.</translation>
    </message>
    <message>
      <source>Looking through the layers …</source>
      <translation>Die Schichten werden durchgesehen …</translation>
    </message>
    <message>
      <source>Not reached from behind.</source>
      <translation>Von hinten nicht erreicht.</translation>
    </message>
    <message>
      <source>Nothing lies over it: {share} in view.</source>
      <translation>Nichts liegt darüber: {share} zu sehen.</translation>
    </message>
    <message>
      <source>{share} in view. Depths under the skin, mm; teaching only.</source>
      <translation>{share} zu sehen. Tiefen unter der Haut, mm; nur zum Lernen.</translation>
    </message>
    <message>
      <source>, {mm} of layers off here</source>
      <translation>, hier sind {mm} abgetragen</translation>
    </message>
    <message>
      <source>peeled to stratum {n}, {name}{under}</source>
      <translation>abgetragen bis Schicht {n}, {name}{under}</translation>
    </message>
    <message>
      <source>Up and Down peel, Control with Up or Down chooses a band, Space takes it out or puts it back.</source>
      <translation>Auf und Ab tragen ab, mit Strg wählen sie ein Band, die Leertaste nimmt es heraus oder legt es zurück.</translation>
    </message>
    <message>
      <source> – {mm} here</source>
      <translation> – hier {mm}</translation>
    </message>
    <message>
      <source>whole</source>
      <translation>ganz</translation>
    </message>
    <message>
      <source>all taken off</source>
      <translation>alles abgetragen</translation>
    </message>
    <message>
      <source>Click: take it out or put it back</source>
      <translation>Klick: herausnehmen oder zurücklegen</translation>
    </message>
    <message>
      <source>band {n}, {name}</source>
      <translation>Band {n}, {name}</translation>
    </message>
    <message>
      <source>Stratum {n}, {name}{mm}</source>
      <translation>Schicht {n}, {name}{mm}</translation>
    </message>
    <message>
      <source>left side</source>
      <translation>linke Seite</translation>
    </message>
    <message>
      <source>right side</source>
      <translation>rechte Seite</translation>
    </message>
    <message>
      <source>Hidden</source>
      <translation>Verborgen</translation>
    </message>
    <message>
      <source>Bring back: {what}</source>
      <translation>Zurückholen: {what}</translation>
    </message>
    <message>
      <source>Scene {n} of {count}</source>
      <translation>Szene {n} von {count}</translation>
    </message>
    <message>
      <source>{place}: {count} layers from the skin inward, mm</source>
      <translation>{place}: {count} Schichten von der Haut nach innen, mm</translation>
    </message>
    <message>
      <source>on both sides</source>
      <translation>auf beiden Seiten</translation>
    </message>
    <message>
      <source>on the left side</source>
      <translation>auf der linken Seite</translation>
    </message>
    <message>
      <source>on the right side</source>
      <translation>auf der rechten Seite</translation>
    </message>
    <message>
      <source>Step {n}: {title}</source>
      <translation>Schritt {n}: {title}</translation>
    </message>
    <message>
      <source>left: {left}; right: {right}</source>
      <translation>links: {left}; rechts: {right}</translation>
    </message>
    <message>
      <source>Folded {share}</source>
      <translation>Umgeklappt {share}</translation>
    </message>
    <message>
      <source>In place</source>
      <translation>An seinem Ort</translation>
    </message>
    <message>
      <source>about {minutes} min</source>
      <translation>etwa {minutes} min</translation>
    </message>
    <message>
      <source>{count} scenes · {file}</source>
      <translation>{count} Szenen · {file}</translation>
    </message>
    <message>
      <source>The subject's left is {left}; the head is {head}.</source>
      <translation>Die linke Körperseite ist {left}; der Kopf ist {head}.</translation>
    </message>
    <message>
      <source>at the top of the picture</source>
      <translation>oben im Bild</translation>
    </message>
    <message>
      <source>at the bottom of the picture</source>
      <translation>unten im Bild</translation>
    </message>
    <message>
      <source>along the line of sight</source>
      <translation>in Blickrichtung</translation>
    </message>
    <message>
      <source>on the left of the picture</source>
      <translation>links im Bild</translation>
    </message>
    <message>
      <source>on the right of the picture</source>
      <translation>rechts im Bild</translation>
    </message>
    <message>
      <source>Upright</source>
      <translation>Aufrecht</translation>
    </message>
    <message>
      <source>{kind}, stratum {n} ({name}){done}</source>
      <translation>{kind}, Schicht {n} ({name}){done}</translation>
    </message>
    <message>
      <source>, taken off</source>
      <translation>, abgetragen</translation>
    </message>
    <message>
      <source>{mm} mm at its thickest</source>
      <translation>{mm} mm an der dicksten Stelle</translation>
    </message>
    <message>
      <source>{words}; drawn thicker</source>
      <translation>{words}; dicker gezeichnet</translation>
    </message>
    <message>
      <source>drawn thicker than it is</source>
      <translation>dicker gezeichnet, als es ist</translation>
    </message>
    <message>
      <source> (inconstant)</source>
      <translation> (nicht immer)</translation>
    </message>
    <message>
      <source>{name} (group)</source>
      <translation>{name} (Gruppe)</translation>
    </message>
    <message>
      <source>{listed}. In view: {share}</source>
      <translation>{listed}. Zu sehen: {share}</translation>
    </message>
    <message>
      <source>{title}, {share} in view. {listed}.</source>
      <translation>{title}, {share} zu sehen. {listed}.</translation>
    </message>
    <message>
      <source>{title}: {share} in view</source>
      <translation>{title}: {share} zu sehen</translation>
    </message>
    <message>
      <source> The plan brings no more of it into view</source>
      <translation> Mehr legt der Plan davon nicht frei</translation>
    </message>
    <message>
      <source>{words}: {name} still hides {share} ({why}).</source>
      <translation>{words}: {name} verdeckt noch {share} ({why}).</translation>
    </message>
    <message>
      <source>{title} hides {share}</source>
      <translation>{title} verdeckt {share}</translation>
    </message>
    <message>
      <source>not reached from behind</source>
      <translation>von hinten nicht erreicht</translation>
    </message>
    <message>
      <source>nothing; {share} in view</source>
      <translation>nichts; {share} zu sehen</translation>
    </message>
    <message>
      <source> and {count} more</source>
      <translation> und {count} weitere</translation>
    </message>
    <message>
      <source>{title} is not reached from behind.</source>
      <translation>{title} ist von hinten nicht zu erreichen.</translation>
    </message>
    <message>
      <source>Nothing lies over {title}: {share} in view.</source>
      <translation>Nichts liegt über {title}: {share} zu sehen.</translation>
    </message>
    <message>
      <source>{title} is in view already: {share} of it.</source>
      <translation>{title} ist schon zu sehen: {share} davon.</translation>
    </message>
    <message>
      <source> after 1 step.</source>
      <translation> nach 1 Schritt.</translation>
    </message>
    <message>
      <source>At risk, from the cuts: {listed}{more}.</source>
      <translation>Gefährdet, Abstand von den Schnitten: {listed}{more}.</translation>
    </message>
    <message>
      <source>{title} (folded)</source>
      <translation>{title} (umgeklappt)</translation>
    </message>
    <message>
      <source> after {count} steps.</source>
      <translation> nach {count} Schritten.</translation>
    </message>
    <message>
      <source>stratum {n} ({name}){group}; {mm} mm thick there</source>
      <translation>Schicht {n} ({name}){group}; dort {mm} mm dick</translation>
    </message>
    <message>
      <source>under 1</source>
      <translation>unter 1</translation>
    </message>
    <message>
      <source>{along} mm along the surface ({mm} mm straight)</source>
      <translation>{along} mm über die Oberfläche ({mm} mm gerade)</translation>
    </message>
    <message>
      <source>{mm} mm straight</source>
      <translation>{mm} mm gerade</translation>
    </message>
    <message>
      <source>spine {level}, {across}</source>
      <translation>Dornfortsatz {level}, {across}</translation>
    </message>
    <message>
      <source>midline</source>
      <translation>Mittellinie</translation>
    </message>
    <message>
      <source>{mm} mm {side}</source>
      <translation>{mm} mm {side}</translation>
    </message>
    <message>
      <source>First, on the {side}: {titles}.</source>
      <translation>Zuerst, {side}: {titles}.</translation>
    </message>
    <message>
      <source>Pose: {name}. {note}. In a donor with the arms forward the lower angle of the shoulder blade lies about one level further down.</source>
      <translation>Haltung: {name}. {note}. Liegen die Arme nach vorn, steht der untere Schulterblattwinkel etwa einen Wirbel tiefer.</translation>
    </message>
    <message>
      <source>Pose: {name}</source>
      <translation>Haltung: {name}</translation>
    </message>
    <message>
      <source>Pose: {name}.</source>
      <translation>Haltung: {name}.</translation>
    </message>
    <message>
      <source>strata 0–{last}</source>
      <translation>Schichten 0–{last}</translation>
    </message>
    <message>
      <source>{names} and {more} more</source>
      <translation>{names} und {more} weitere</translation>
    </message>
    <message>
      <source>stratum 0 ({name})</source>
      <translation>Schicht 0 ({name})</translation>
    </message>
    <message>
      <source>Only {names}</source>
      <translation>Nur {names}</translation>
    </message>
    <message>
      <source>Peeled: {what}, both sides</source>
      <translation>Abgetragen: {what}, beide Seiten</translation>
    </message>
    <message>
      <source>Removed by steps: {names}</source>
      <translation>Durch Schritte entfernt: {names}</translation>
    </message>
    <message>
      <source>Hidden: {names}</source>
      <translation>Verborgen: {names}</translation>
    </message>
    <message>
      <source>Folded back: {names}</source>
      <translation>Umgeklappt: {names}</translation>
    </message>
    <message>
      <source>The {side} side</source>
      <translation>Die Seite {side}</translation>
    </message>
    <message>
      <source>Off: {what}, both sides</source>
      <translation>Weg: {what}, beide Seiten</translation>
    </message>
    <message>
      <source>Peeled: {what}, {side}</source>
      <translation>Abgetragen: {what}, {side}</translation>
    </message>
    <message>
      <source>Off: {what}, {side}</source>
      <translation>Weg: {what}, {side}</translation>
    </message>
    <message>
      <source>Laid: {what} – %p %</source>
      <translation>Gelegt: {what} – %p %</translation>
    </message>
    <message>
      <source>No part is called “{text}”.</source>
      <translation>Kein Teil heißt „{text}“.</translation>
    </message>
    <message>
      <source>bone</source>
      <translation>Knochen</translation>
    </message>
    <message>
      <source>cartilage</source>
      <translation>Knorpel</translation>
    </message>
    <message>
      <source>intervertebral disc</source>
      <translation>Bandscheibe</translation>
    </message>
    <message>
      <source>ligament</source>
      <translation>Band</translation>
    </message>
    <message>
      <source>muscle</source>
      <translation>Muskel</translation>
    </message>
    <message>
      <source>tendon</source>
      <translation>Sehne</translation>
    </message>
    <message>
      <source>fascia</source>
      <translation>Faszie</translation>
    </message>
    <message>
      <source>nerve</source>
      <translation>Nerv</translation>
    </message>
    <message>
      <source>artery</source>
      <translation>Arterie</translation>
    </message>
    <message>
      <source>vein</source>
      <translation>Vene</translation>
    </message>
    <message>
      <source>content of the vertebral canal</source>
      <translation>Inhalt des Wirbelkanals</translation>
    </message>
    <message>
      <source>context, not modelled here</source>
      <translation>Umgebung, hier nicht modelliert</translation>
    </message>
    <message>
      <source>Attachments</source>
      <translation>Ansätze</translation>
    </message>
    <message>
      <source>Nerve</source>
      <translation>Nerv</translation>
    </message>
    <message>
      <source>Artery</source>
      <translation>Arterie</translation>
    </message>
    <message>
      <source>Action</source>
      <translation>Wirkung</translation>
    </message>
    <message>
      <source>Course</source>
      <translation>Verlauf</translation>
    </message>
    <message>
      <source>Thickness</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>Covered by</source>
      <translation>Bedeckt von</translation>
    </message>
    <message>
      <source>To note</source>
      <translation>Zu beachten</translation>
    </message>
    <message>
      <source>Sources differ</source>
      <translation>Quellen sind uneins</translation>
    </message>
    <message>
      <source>from {words}</source>
      <translation>von: {words}</translation>
    </message>
    <message>
      <source>to {words}</source>
      <translation>nach: {words}</translation>
    </message>
    <message>
      <source>at {words}</source>
      <translation>an: {words}</translation>
    </message>
    <message>
      <source>Standing, as in anatomy</source>
      <translation>Stehend, wie in der Anatomie</translation>
    </message>
    <message>
      <source>Prone, from the left side</source>
      <translation>Bauchlage, von links</translation>
    </message>
    <message>
      <source>Prone, from the right side</source>
      <translation>Bauchlage, von rechts</translation>
    </message>
    <message>
      <source>Prone, from the head end</source>
      <translation>Bauchlage, vom Kopfende</translation>
    </message>
    <message>
      <source>Prone, from the foot end</source>
      <translation>Bauchlage, vom Fußende</translation>
    </message>
    <message>
      <source>Standing model laid down: blades and arms not moved</source>
      <translation>Stehendes Modell, hingelegt: Schulterblätter und Arme nicht bewegt</translation>
    </message>
    <message>
      <source>Not yet.</source>
      <translation>Noch nicht.</translation>
    </message>
    <message>
      <source>Do</source>
      <translation>Tun</translation>
    </message>
    <message>
      <source>Reveals</source>
      <translation>Zeigt</translation>
    </message>
    <message>
      <source>Keep</source>
      <translation>Schonen</translation>
    </message>
    <message>
      <source>Cut</source>
      <translation>Schnitt</translation>
    </message>
    <message>
      <source>Hinge</source>
      <translation>Scharnier</translation>
    </message>
    <message>
      <source>Too deep if</source>
      <translation>Zu tief, wenn</translation>
    </message>
    <message>
      <source>Caution</source>
      <translation>Vorsicht</translation>
    </message>
    <message>
      <source>Courses differ</source>
      <translation>Kurse sind verschieden</translation>
    </message>
    <message>
      <source>done</source>
      <translation>getan</translation>
    </message>
    <message>
      <source>may be done now</source>
      <translation>jetzt möglich</translation>
    </message>
    <message>
      <source>not yet</source>
      <translation>noch nicht</translation>
    </message>
    <message>
      <source>L</source>
      <translation>L</translation>
    </message>
    <message>
      <source>R</source>
      <translation>R</translation>
    </message>
    <message>
      <source>Head</source>
      <translation>Kopf</translation>
    </message>
    <message>
      <source>Foot</source>
      <translation>Fuß</translation>
    </message>
    <message>
      <source>Back</source>
      <translation>Hinten</translation>
    </message>
    <message>
      <source>Front</source>
      <translation>Vorn</translation>
    </message>
    <message>
      <source>left</source>
      <translation>links</translation>
    </message>
    <message>
      <source>right</source>
      <translation>rechts</translation>
    </message>
    <message>
      <source>Trapezius</source>
      <translation>Trapezius</translation>
    </message>
    <message>
      <source>Rhomboids</source>
      <translation>Rhomboidei</translation>
    </message>
    <message>
      <source>Latissimus dorsi</source>
      <translation>Latissimus dorsi</translation>
    </message>
    <message>
      <source>Levator scapulae</source>
      <translation>Levator scapulae</translation>
    </message>
    <message>
      <source>Serratus posterior superior</source>
      <translation>Serratus posterior superior</translation>
    </message>
    <message>
      <source>Serratus posterior inferior</source>
      <translation>Serratus posterior inferior</translation>
    </message>
    <message>
      <source>Splenius capitis</source>
      <translation>Splenius capitis</translation>
    </message>
    <message>
      <source>Splenius cervicis</source>
      <translation>Splenius cervicis</translation>
    </message>
    <message>
      <source>Thoracolumbar fascia, posterior layer</source>
      <translation>Fascia thoracolumbalis, hinteres Blatt</translation>
    </message>
    <message>
      <source>Semispinalis capitis</source>
      <translation>Semispinalis capitis</translation>
    </message>
    <message>
      <source>Feel the landmarks</source>
      <translation>Knochenpunkte tasten</translation>
    </message>
    <message>
      <source>Cut and turn the skin</source>
      <translation>Haut schneiden und umschlagen</translation>
    </message>
    <message>
      <source>Search and remove the superficial fascia</source>
      <translation>Unterhautgewebe absuchen und entfernen</translation>
    </message>
    <message>
      <source>Clean trapezius and latissimus</source>
      <translation>Trapezius und Latissimus säubern</translation>
    </message>
    <message>
      <source>Fold trapezius outward</source>
      <translation>Trapezius nach außen klappen</translation>
    </message>
    <message>
      <source>Fold latissimus outward</source>
      <translation>Latissimus nach außen klappen</translation>
    </message>
    <message>
      <source>Fold the rhomboids outward</source>
      <translation>Rhomboidei nach außen klappen</translation>
    </message>
    <message>
      <source>See levator scapulae</source>
      <translation>Levator scapulae aufsuchen</translation>
    </message>
    <message>
      <source>Fold serratus posterior superior outward</source>
      <translation>Serratus posterior superior nach außen klappen</translation>
    </message>
    <message>
      <source>Fold serratus posterior inferior outward</source>
      <translation>Serratus posterior inferior nach außen klappen</translation>
    </message>
    <message>
      <source>Fold the splenii outward and up</source>
      <translation>Splenii nach außen und oben klappen</translation>
    </message>
    <message>
      <source>Open the thoracolumbar fascia</source>
      <translation>Fascia thoracolumbalis öffnen</translation>
    </message>
    <message>
      <source>Part the three columns</source>
      <translation>Die drei Säulen trennen</translation>
    </message>
    <message>
      <source>Part the columns in the neck</source>
      <translation>Die Säulen im Nacken trennen</translation>
    </message>
    <message>
      <source>Turn semispinalis capitis down</source>
      <translation>Semispinalis capitis nach unten klappen</translation>
    </message>
    <message>
      <source>Clean the suboccipital triangle</source>
      <translation>Subokzipitales Dreieck säubern</translation>
    </message>
    <message>
      <source>Draw aside erector spinae</source>
      <translation>Erector spinae beiseiteziehen</translation>
    </message>
    <message>
      <source>Show the slanting group in the neck</source>
      <translation>Schräges System im Nacken darstellen</translation>
    </message>
    <message>
      <source>Show the short muscles</source>
      <translation>Kurze Muskeln darstellen</translation>
    </message>
    <message>
      <source>Bare and take the laminae</source>
      <translation>Wirbelbögen freilegen und abnehmen</translation>
    </message>
    <message>
      <source>Open the dura</source>
      <translation>Dura öffnen</translation>
    </message>
    <message>
      <source>Show the whole text of the step</source>
      <translation>Den ganzen Text des Schritts zeigen</translation>
    </message>
    <message>
      <source>Picture of the back</source>
      <translation>Bild des Rückens</translation>
    </message>
    <message>
      <source>Page {n} of {count}</source>
      <translation>Seite {n} von {count}</translation>
    </message>
    <message>
      <source>What will be made</source>
      <translation>Was entsteht</translation>
    </message>
    <message>
      <source>See the pages…</source>
      <translation>Seiten ansehen …</translation>
    </message>
    <message>
      <source>&amp;Paper</source>
      <translation>&amp;Papier</translation>
    </message>
    <message>
      <source>Paper</source>
      <translation>Papier</translation>
    </message>
    <message>
      <source>Letter</source>
      <translation>Letter</translation>
    </message>
    <message>
      <source>&amp;Side</source>
      <translation>&amp;Seite</translation>
    </message>
    <message>
      <source>Side</source>
      <translation>Seite</translation>
    </message>
    <message>
      <source>Both sides</source>
      <translation>Beide Seiten</translation>
    </message>
    <message>
      <source>Left side</source>
      <translation>Linke Seite</translation>
    </message>
    <message>
      <source>Right side</source>
      <translation>Rechte Seite</translation>
    </message>
    <message>
      <source>&amp;Kind</source>
      <translation>&amp;Art</translation>
    </message>
    <message>
      <source>Kind</source>
      <translation>Art</translation>
    </message>
    <message>
      <source>Full: everything a table needs</source>
      <translation>Voll: alles, was ein Tisch braucht</translation>
    </message>
    <message>
      <source>Short: two to four pages, one row a step</source>
      <translation>Kurz: zwei bis vier Seiten, eine Zeile je Schritt</translation>
    </message>
    <message>
      <source>Blank, to test yourself; answers on the last page</source>
      <translation>Ohne Namen, zum Prüfen; Antworten auf der letzten Seite</translation>
    </message>
    <message>
      <source>S&amp;teps</source>
      <translation>S&amp;chritte</translation>
    </message>
    <message>
      <source>Steps on the sheet</source>
      <translation>Schritte auf dem Blatt</translation>
    </message>
    <message>
      <source>All steps</source>
      <translation>Alle Schritte</translation>
    </message>
    <message>
      <source>No steps</source>
      <translation>Keine Schritte</translation>
    </message>
    <message>
      <source>One file of about 3 MB that opens in a browser with no network, on a phone too: turn, peel, hide, see through, names and captions, search, the steps of the plan, cautions. Folds, sections and probing stay in this program.</source>
      <translation>Eine Datei von etwa 3 MB, die sich ohne Netz im Browser öffnet, auch auf dem Telefon: drehen, abtragen, verbergen, durchblicken, Namen und Angaben, Suche, die Schritte des Plans, Vorsichtsregeln. Umklappen, Schnitte und Sondieren bleiben in diesem Programm.</translation>
    </message>
    <message>
      <source>Write page…</source>
      <translation>Seite schreiben …</translation>
    </message>
    <message>
      <source>&amp;Talk</source>
      <translation>&amp;Vortrag</translation>
    </message>
    <message>
      <source>No talk</source>
      <translation>Kein Vortrag</translation>
    </message>
    <message>
      <source>A talk from a file</source>
      <translation>Ein Vortrag aus einer Datei</translation>
    </message>
    <message>
      <source>Talk file</source>
      <translation>Vortragsdatei</translation>
    </message>
    <message>
      <source>Choose a file</source>
      <translation>Datei wählen</translation>
    </message>
    <message>
      <source>&amp;Choose…</source>
      <translation>&amp;Wählen …</translation>
    </message>
    <message>
      <source>With the speaker's &amp;notes</source>
      <translation>Mit den &amp;Notizen des Vortragenden</translation>
    </message>
    <message>
      <source>Write into a folder…</source>
      <translation>In einen Ordner schreiben …</translation>
    </message>
    <message>
      <source>&amp;Parts</source>
      <translation>&amp;Teile</translation>
    </message>
    <message>
      <source>Parts</source>
      <translation>Teile</translation>
    </message>
    <message>
      <source>All parts</source>
      <translation>Alle Teile</translation>
    </message>
    <message>
      <source>What is shown now</source>
      <translation>Was jetzt zu sehen ist</translation>
    </message>
    <message>
      <source>What is picked</source>
      <translation>Was gewählt ist</translation>
    </message>
    <message>
      <source>&amp;Files</source>
      <translation>&amp;Dateien</translation>
    </message>
    <message>
      <source>Files</source>
      <translation>Dateien</translation>
    </message>
    <message>
      <source>One a part</source>
      <translation>Eine je Teil</translation>
    </message>
    <message>
      <source>One a stratum</source>
      <translation>Eine je Schicht</translation>
    </message>
    <message>
      <source>One for all</source>
      <translation>Eine für alles</translation>
    </message>
    <message>
      <source>Fo&amp;rmat</source>
      <translation>Fo&amp;rmat</translation>
    </message>
    <message>
      <source>Format</source>
      <translation>Format</translation>
    </message>
    <message>
      <source>STL, for printing in 3D</source>
      <translation>STL, zum Drucken in 3D</translation>
    </message>
    <message>
      <source>GLB, for pictures</source>
      <translation>GLB, für Bilder</translation>
    </message>
    <message>
      <source>Pages of the lab sheet</source>
      <translation>Seiten des Laborblatts</translation>
    </message>
    <message>
      <source>Pages</source>
      <translation>Seiten</translation>
    </message>
    <message>
      <source>The chosen page</source>
      <translation>Die gewählte Seite</translation>
    </message>
    <message>
      <source>As a black-and-white printer shows it</source>
      <translation>Wie ein Schwarzweißdrucker es zeigt</translation>
    </message>
    <message>
      <source>Before presenting</source>
      <translation>Vor dem Vorführen</translation>
    </message>
    <message>
      <source>&amp;Last row</source>
      <translation>&amp;Letzte Reihe</translation>
    </message>
    <message>
      <source>Distance of the last row, metres</source>
      <translation>Abstand der letzten Reihe, Meter</translation>
    </message>
    <message>
      <source>Picture &amp;height</source>
      <translation>Bild&amp;höhe</translation>
    </message>
    <message>
      <source>Height of the picture, metres</source>
      <translation>Höhe des Bildes, Meter</translation>
    </message>
    <message>
      <source>L&amp;ight</source>
      <translation>L&amp;icht</translation>
    </message>
    <message>
      <source>Light in the hall</source>
      <translation>Licht im Saal</translation>
    </message>
    <message>
      <source>Dark hall</source>
      <translation>Dunkler Saal</translation>
    </message>
    <message>
      <source>Dimmed</source>
      <translation>Gedämpft</translation>
    </message>
    <message>
      <source>Lights on</source>
      <translation>Licht an</translation>
    </message>
    <message>
      <source>Daylight</source>
      <translation>Tageslicht</translation>
    </message>
    <message>
      <source>&amp;Screen of the hall</source>
      <translation>&amp;Bildschirm des Saals</translation>
    </message>
    <message>
      <source>Screen of the hall</source>
      <translation>Bildschirm des Saals</translation>
    </message>
    <message>
      <source>Room check</source>
      <translation>Raumprüfung</translation>
    </message>
    <message>
      <source>Not now</source>
      <translation>Nicht jetzt</translation>
    </message>
    <message>
      <source>Look through all scenes</source>
      <translation>Alle Szenen durchsehen</translation>
    </message>
    <message>
      <source>Probe at a place</source>
      <translation>An einer Stelle sondieren</translation>
    </message>
    <message>
      <source>Le&amp;vel of the spine</source>
      <translation>&amp;Höhe der Wirbelsäule</translation>
    </message>
    <message>
      <source>Level of the spine</source>
      <translation>Höhe der Wirbelsäule</translation>
    </message>
    <message>
      <source>From the &amp;midline</source>
      <translation>Von der &amp;Mittellinie</translation>
    </message>
    <message>
      <source>Distance from the midline, mm</source>
      <translation>Abstand von der Mittellinie, mm</translation>
    </message>
    <message>
      <source>Parts in order from the skin, depths in mm</source>
      <translation>Teile der Reihe nach von der Haut, Tiefen in mm</translation>
    </message>
    <message>
      <source>Enters</source>
      <translation>Eintritt</translation>
    </message>
    <message>
      <source>Thick</source>
      <translation>Dicke</translation>
    </message>
    <message>
      <source>Leaves</source>
      <translation>Austritt</translation>
    </message>
    <message>
      <source>Put the list on the clipboard as text</source>
      <translation>Liste als Text in die Zwischenablage</translation>
    </message>
    <message>
      <source>Copy</source>
      <translation>Kopieren</translation>
    </message>
    <message>
      <source>Float</source>
      <translation>Ablösen</translation>
    </message>
    <message>
      <source>Plane of the section</source>
      <translation>Ebene des Schnitts</translation>
    </message>
    <message>
      <source>Transverse</source>
      <translation>Transversal</translation>
    </message>
    <message>
      <source>Sagittal</source>
      <translation>Sagittal</translation>
    </message>
    <message>
      <source>Coronal</source>
      <translation>Frontal</translation>
    </message>
    <message>
      <source>Free</source>
      <translation>Frei</translation>
    </message>
    <message>
      <source>Where the section lies</source>
      <translation>Wo der Schnitt liegt</translation>
    </message>
    <message>
      <source>One level down</source>
      <translation>Eine Höhe tiefer</translation>
    </message>
    <message>
      <source>One level up</source>
      <translation>Eine Höhe höher</translation>
    </message>
    <message>
      <source>Position of the section, mm</source>
      <translation>Lage des Schnitts, mm</translation>
    </message>
    <message>
      <source>Tilt back and forth, degrees</source>
      <translation>Neigung vor und zurück, Grad</translation>
    </message>
    <message>
      <source>Tilt back and forth</source>
      <translation>Neigung vor und zurück</translation>
    </message>
    <message>
      <source>Tilt to the side, degrees</source>
      <translation>Neigung zur Seite, Grad</translation>
    </message>
    <message>
      <source>Tilt to the side</source>
      <translation>Neigung zur Seite</translation>
    </message>
    <message>
      <source>Off: cuts what the dissection has left</source>
      <translation>Aus: schneidet, was die Präparation übrig lässt</translation>
    </message>
    <message>
      <source>Cut the whole</source>
      <translation>Das Ganze schneiden</translation>
    </message>
    <message>
      <source>Front up, the subject's left on the viewer's right</source>
      <translation>Vorn ist oben, links liegt rechts im Bild</translation>
    </message>
    <message>
      <source>As images lie</source>
      <translation>Wie Schnittbilder liegen</translation>
    </message>
    <message>
      <source>Areas of the section in square centimetres</source>
      <translation>Flächen des Schnitts in Quadratzentimetern</translation>
    </message>
    <message>
      <source>cm²</source>
      <translation>cm²</translation>
    </message>
    <message>
      <source>Flat picture of the section</source>
      <translation>Ebenes Bild des Schnitts</translation>
    </message>
    <message>
      <source>Face the cut</source>
      <translation>Auf den Schnitt blicken</translation>
    </message>
    <message>
      <source>Whole section in the picture</source>
      <translation>Ganzer Schnitt im Bild</translation>
    </message>
    <message>
      <source>Fit</source>
      <translation>Einpassen</translation>
    </message>
    <message>
      <source>SVG, PDF or PNG, as it is shown</source>
      <translation>SVG, PDF oder PNG, wie gezeigt</translation>
    </message>
    <message>
      <source>Save…</source>
      <translation>Speichern …</translation>
    </message>
    <message>
      <source>Click along the line that you would cut, on skin or muscle (or point and press Shift+Q). White is your line, blue the plan's, orange what comes near.</source>
      <translation>Klicken Sie die Linie entlang, die Sie schneiden würden, auf Haut oder Muskel (oder zeigen und Umschalt+Q). Weiß ist Ihre Linie, blau die des Plans, orange, was nahe kommt.</translation>
    </message>
    <message>
      <source>Step that the cut belongs to</source>
      <translation>Schritt, zu dem der Schnitt gehört</translation>
    </message>
    <message>
      <source>&amp;Blade</source>
      <translation>&amp;Klinge</translation>
    </message>
    <message>
      <source>Depth of the blade below the line, mm</source>
      <translation>Tiefe der Klinge unter der Linie, mm</translation>
    </message>
    <message>
      <source>What the cut means</source>
      <translation>Was der Schnitt bedeutet</translation>
    </message>
    <message>
      <source>Last point back</source>
      <translation>Letzten Punkt zurück</translation>
    </message>
    <message>
      <source>Takes the line away and begins anew</source>
      <translation>Nimmt die Linie weg und beginnt neu</translation>
    </message>
    <message>
      <source>Try again</source>
      <translation>Noch einmal</translation>
    </message>
    <message>
      <source>Step of the plan</source>
      <translation>Schritt des Plans</translation>
    </message>
    <message>
      <source>The mistake in words</source>
      <translation>Der Fehler in Worten</translation>
    </message>
    <message>
      <source>Common mistakes</source>
      <translation>Häufige Fehler</translation>
    </message>
    <message>
      <source>Show it on the model; one undo brings all back</source>
      <translation>Am Modell zeigen; einmal Rückgängig holt alles zurück</translation>
    </message>
    <message>
      <source>Show it</source>
      <translation>Zeigen</translation>
    </message>
    <message>
      <source>The model goes to where it has happened, on the side that is worked on; what is laid bare or left behind is tinted. One undo brings all back. Common practice, no source.</source>
      <translation>Das Modell geht dorthin, wo es geschehen ist, auf der bearbeiteten Seite; was bloßliegt oder zurückbleibt, ist getönt. Einmal Rückgängig holt alles zurück. Übliche Praxis, ohne Quelle.</translation>
    </message>
    <message>
      <source>Number of the scene</source>
      <translation>Nummer der Szene</translation>
    </message>
    <message>
      <source>Line of the scene, or the part pointed at</source>
      <translation>Zeile der Szene oder der gezeigte Teil</translation>
    </message>
    <message>
      <source>Notes of the scene</source>
      <translation>Notizen der Szene</translation>
    </message>
    <message>
      <source>Scene before, left arrow</source>
      <translation>Szene davor, Pfeil links</translation>
    </message>
    <message>
      <source>← Before</source>
      <translation>← Davor</translation>
    </message>
    <message>
      <source>Next scene, right arrow</source>
      <translation>Nächste Szene, Pfeil rechts</translation>
    </message>
    <message>
      <source>Next →</source>
      <translation>Weiter →</translation>
    </message>
    <message>
      <source>Pause or play, Space</source>
      <translation>Anhalten oder abspielen, Leertaste</translation>
    </message>
    <message>
      <source>Pause, play</source>
      <translation>Anhalten, abspielen</translation>
    </message>
    <message>
      <source>Slower, minus</source>
      <translation>Langsamer, Minus</translation>
    </message>
    <message>
      <source>Slower</source>
      <translation>Langsamer</translation>
    </message>
    <message>
      <source>Faster, plus</source>
      <translation>Schneller, Plus</translation>
    </message>
    <message>
      <source>Faster</source>
      <translation>Schneller</translation>
    </message>
    <message>
      <source>Back to the scene, R</source>
      <translation>Zurück zur Szene, R</translation>
    </message>
    <message>
      <source>Back to the scene</source>
      <translation>Zurück zur Szene</translation>
    </message>
    <message>
      <source>End, Escape</source>
      <translation>Ende, Esc</translation>
    </message>
    <message>
      <source>End</source>
      <translation>Ende</translation>
    </message>
    <message>
      <source>Notes</source>
      <translation>Notizen</translation>
    </message>
    <message>
      <source>Scene</source>
      <translation>Szene</translation>
    </message>
    <message>
      <source>Clock</source>
      <translation>Uhr</translation>
    </message>
    <message>
      <source>Line for the hall</source>
      <translation>Zeile für den Saal</translation>
    </message>
    <message>
      <source>Next</source>
      <translation>Weiter</translation>
    </message>
    <message>
      <source>Next scene</source>
      <translation>Nächste Szene</translation>
    </message>
    <message>
      <source>Picture of the next scene</source>
      <translation>Bild der nächsten Szene</translation>
    </message>
    <message>
      <source>State</source>
      <translation>Stand</translation>
    </message>
    <message>
      <source>Kept from the hall</source>
      <translation>Dem Saal erspart</translation>
    </message>
    <message>
      <source>Warnings kept from the projected screen</source>
      <translation>Warnungen, die der Saal nicht sieht</translation>
    </message>
    <message>
      <source>Before</source>
      <translation>Davor</translation>
    </message>
    <message>
      <source>◀ Before</source>
      <translation>◀ Davor</translation>
    </message>
    <message>
      <source>Next ▶</source>
      <translation>Weiter ▶</translation>
    </message>
    <message>
      <source>Back to scene</source>
      <translation>Zurück zur Szene</translation>
    </message>
    <message>
      <source>Blank</source>
      <translation>Schwarz</translation>
    </message>
    <message>
      <source>Pen</source>
      <translation>Stift</translation>
    </message>
    <message>
      <source>Clear</source>
      <translation>Wischen</translation>
    </message>
    <message>
      <source>Spotlight</source>
      <translation>Lichtkegel</translation>
    </message>
    <message>
      <source>Picture copied</source>
      <translation>Bild kopiert</translation>
    </message>
    <message>
      <source>Pick a muscle that the plan folds back: it is not one of these.</source>
      <translation>Einen Muskel wählen, den der Plan umklappt: dieser gehört nicht dazu.</translation>
    </message>
    <message>
      <source>Pick a muscle that the plan folds back.</source>
      <translation>Einen Muskel wählen, den der Plan umklappt.</translation>
    </message>
    <message>
      <source>Every step of the plan is done.</source>
      <translation>Alle Schritte des Plans sind getan.</translation>
    </message>
    <message>
      <source>No step has been done yet.</source>
      <translation>Noch kein Schritt ist getan.</translation>
    </message>
    <message>
      <source>Stopped; undo takes back what was done.</source>
      <translation>Angehalten; Rückgängig nimmt das Getane zurück.</translation>
    </message>
    <message>
      <source>The model is still being built.</source>
      <translation>Das Modell wird noch gebaut.</translation>
    </message>
    <message>
      <source>Pick a part first: then what lies over it is tinted and listed.</source>
      <translation>Zuerst einen Teil wählen: dann wird getönt und aufgezählt, was darüber liegt.</translation>
    </message>
    <message>
      <source>Pick a part first: then the fewest steps that uncover it are done.</source>
      <translation>Zuerst einen Teil wählen: dann werden die wenigsten Schritte getan, die ihn freilegen.</translation>
    </message>
    <message>
      <source>The model is not ready to be probed yet.</source>
      <translation>Das Modell kann noch nicht sondiert werden.</translation>
    </message>
    <message>
      <source>Click along the line that you would cut.</source>
      <translation>Die Linie entlangklicken, die Sie schneiden würden.</translation>
    </message>
    <message>
      <source>A cut can be rehearsed as soon as the model is finished.</source>
      <translation>Ein Schnitt lässt sich üben, sobald das Modell fertig ist.</translation>
    </message>
    <message>
      <source>Getting ready …</source>
      <translation>Wird vorbereitet …</translation>
    </message>
    <message>
      <source>Point at the layer that is to be cut.</source>
      <translation>Auf die Schicht zeigen, die geschnitten werden soll.</translation>
    </message>
    <message>
      <source>The section can be made as soon as the model is finished.</source>
      <translation>Der Schnitt ist möglich, sobald das Modell fertig ist.</translation>
    </message>
    <message>
      <source>The section is at the end of the model.</source>
      <translation>Der Schnitt ist am Ende des Modells.</translation>
    </message>
    <message>
      <source>The back is still being built; try again when it is there.</source>
      <translation>Der Rücken wird noch gebaut; noch einmal, wenn er da ist.</translation>
    </message>
    <message>
      <source>One file is still being written; wait for it.</source>
      <translation>Eine Datei wird noch geschrieben; bitte warten.</translation>
    </message>
    <message>
      <source>Presenting ended.</source>
      <translation>Vorführung beendet.</translation>
    </message>
    <message>
      <source>There is no scene yet: keep a view first.</source>
      <translation>Es gibt noch keine Szene: zuerst eine Ansicht behalten.</translation>
    </message>
    <message>
      <source>The sample talk. Change it as you like; save it under a name of your own.</source>
      <translation>Der Beispielvortrag. Ändern Sie ihn nach Belieben; speichern Sie ihn unter eigenem Namen.</translation>
    </message>
    <message>
      <source>The talk has no scene yet: F7 keeps a view; or open the sample talk.</source>
      <translation>Der Vortrag hat noch keine Szene: F7 behält eine Ansicht; oder den Beispielvortrag öffnen.</translation>
    </message>
    <message>
      <source>Pick a part first; the note sticks where it was clicked.</source>
      <translation>Zuerst einen Teil wählen; die Notiz haftet, wo geklickt wurde.</translation>
    </message>
    <message>
      <source>Free orbit. Home returns to the fixed view.</source>
      <translation>Freies Drehen. Pos1 kehrt zur festen Ansicht zurück.</translation>
    </message>
    <message>
      <source>Gentle orbit.</source>
      <translation>Sanftes Drehen.</translation>
    </message>
    <message>
      <source>English names first</source>
      <translation>Englische Namen zuerst</translation>
    </message>
    <message>
      <source>Keep the {half}</source>
      <translation>Behalten: {half}</translation>
    </message>
    <message>
      <source>{count} parts, {area} cm² together</source>
      <translation>{count} Teile, zusammen {area} cm²</translation>
    </message>
    <message>
      <source>Nothing is cut</source>
      <translation>Nichts ist geschnitten</translation>
    </message>
    <message>
      <source>upper half</source>
      <translation>obere Hälfte</translation>
    </message>
    <message>
      <source>lower half</source>
      <translation>untere Hälfte</translation>
    </message>
    <message>
      <source>right half</source>
      <translation>rechte Hälfte</translation>
    </message>
    <message>
      <source>left half</source>
      <translation>linke Hälfte</translation>
    </message>
    <message>
      <source>front half</source>
      <translation>vordere Hälfte</translation>
    </message>
    <message>
      <source>back half</source>
      <translation>hintere Hälfte</translation>
    </message>
    <message>
      <source>Study</source>
      <translation>Lernen</translation>
    </message>
    <message>
      <source>Tag test…</source>
      <translation>Stationenprüfung …</translation>
    </message>
    <message>
      <source>A pin on a structure in a peeled back: name it, its nerve, what lies deep to it</source>
      <translation>Eine Nadel an einer Struktur im abgetragenen Rücken: benennen, ihr Nerv, was darunter liegt</translation>
    </message>
    <message>
      <source>Tag test</source>
      <translation>Stationenprüfung</translation>
    </message>
    <message>
      <source>Results…</source>
      <translation>Ergebnisse …</translation>
    </message>
    <message>
      <source>What is weak, what comes next, who learns; nothing leaves this computer</source>
      <translation>Was schwach ist, was als Nächstes kommt, wer lernt; nichts verlässt diesen Computer</translation>
    </message>
    <message>
      <source>Results</source>
      <translation>Ergebnisse</translation>
    </message>
    <message>
      <source>Skin</source>
      <translation>Haut</translation>
    </message>
    <message>
      <source>Superficial fascia</source>
      <translation>Oberflächliche Faszie</translation>
    </message>
    <message>
      <source>Name the tagged structure</source>
      <translation>Die markierte Struktur benennen</translation>
    </message>
    <message>
      <source>Its nerve</source>
      <translation>Ihr Nerv</translation>
    </message>
    <message>
      <source>Its artery</source>
      <translation>Ihre Arterie</translation>
    </message>
    <message>
      <source>An attachment</source>
      <translation>Ein Ansatz oder Ursprung</translation>
    </message>
    <message>
      <source>An action</source>
      <translation>Eine Wirkung</translation>
    </message>
    <message>
      <source>What lies directly deep to the pin</source>
      <translation>Was unmittelbar unter der Nadel liegt</translation>
    </message>
    <message>
      <source>Which level</source>
      <translation>Welche Höhe</translation>
    </message>
    <message>
      <source>Left or right</source>
      <translation>Links oder rechts</translation>
    </message>
    <message>
      <source>Point to it</source>
      <translation>Darauf zeigen</translation>
    </message>
    <message>
      <source>Put five in order of depth</source>
      <translation>Fünf nach der Tiefe ordnen</translation>
    </message>
    <message>
      <source>Name an area in a section</source>
      <translation>Eine Fläche im Schnitt benennen</translation>
    </message>
    <message>
      <source>Point to an area in a section</source>
      <translation>Auf eine Fläche im Schnitt zeigen</translation>
    </message>
    <message>
      <source>Time left at this station, seconds</source>
      <translation>Restzeit an dieser Station, Sekunden</translation>
    </message>
    <message>
      <source>Time is over</source>
      <translation>Die Zeit ist um</translation>
    </message>
    <message>
      <source>Paused: the picture is covered and the clock stands.</source>
      <translation>Pause: Das Bild ist verdeckt, die Uhr steht.</translation>
    </message>
    <message>
      <source>How it went</source>
      <translation>Wie es lief</translation>
    </message>
    <message>
      <source>Questions of this test; Enter shows one on the model</source>
      <translation>Fragen dieser Prüfung; die Auswahl zeigt eine am Modell</translation>
    </message>
    <message>
      <source>Question</source>
      <translation>Frage</translation>
    </message>
    <message>
      <source>Your answer</source>
      <translation>Ihre Antwort</translation>
    </message>
    <message>
      <source>Latin or English; small slips are forgiven</source>
      <translation>Lateinisch oder englisch; kleine Tippfehler zählen nicht</translation>
    </message>
    <message>
      <source>Answer</source>
      <translation>Antworten</translation>
    </message>
    <message>
      <source>Five parts, the outermost first</source>
      <translation>Fünf Teile, der äußerste zuerst</translation>
    </message>
    <message>
      <source>Alt+Up</source>
      <translation>Alt+Auf</translation>
    </message>
    <message>
      <source>Move up</source>
      <translation>Nach oben</translation>
    </message>
    <message>
      <source>Alt+Down</source>
      <translation>Alt+Ab</translation>
    </message>
    <message>
      <source>Move down</source>
      <translation>Nach unten</translation>
    </message>
    <message>
      <source>This order</source>
      <translation>Diese Reihenfolge</translation>
    </message>
    <message>
      <source>Click on it in the picture. By keyboard: Ctrl with the arrows moves the pointer, Enter clicks.</source>
      <translation>Klicken Sie im Bild darauf. Mit der Tastatur: Strg und Pfeile bewegen den Zeiger, die Eingabetaste klickt.</translation>
    </message>
    <message>
      <source>Verdict</source>
      <translation>Urteil</translation>
    </message>
    <message>
      <source>Explanation</source>
      <translation>Erklärung</translation>
    </message>
    <message>
      <source>I don't know</source>
      <translation>Weiß ich nicht</translation>
    </message>
    <message>
      <source>Pause</source>
      <translation>Pause</translation>
    </message>
    <message>
      <source>End test</source>
      <translation>Prüfung beenden</translation>
    </message>
    <message>
      <source>Back to the model</source>
      <translation>Zurück zum Modell</translation>
    </message>
    <message>
      <source>Test again…</source>
      <translation>Noch einmal prüfen …</translation>
    </message>
    <message>
      <source>&amp;Learner</source>
      <translation>&amp;Lernende</translation>
    </message>
    <message>
      <source>Learner</source>
      <translation>Lernende</translation>
    </message>
    <message>
      <source>&amp;New learner…</source>
      <translation>&amp;Neue Lernende …</translation>
    </message>
    <message>
      <source>&amp;Region</source>
      <translation>&amp;Gegend</translation>
    </message>
    <message>
      <source>Region</source>
      <translation>Gegend</translation>
    </message>
    <message>
      <source>The whole back</source>
      <translation>Der ganze Rücken</translation>
    </message>
    <message>
      <source>Neck and head</source>
      <translation>Nacken und Kopf</translation>
    </message>
    <message>
      <source>Chest and shoulder</source>
      <translation>Brust und Schulter</translation>
    </message>
    <message>
      <source>Loin and pelvis</source>
      <translation>Lende und Becken</translation>
    </message>
    <message>
      <source>&amp;Questions</source>
      <translation>&amp;Fragen</translation>
    </message>
    <message>
      <source>Number of questions</source>
      <translation>Zahl der Fragen</translation>
    </message>
    <message>
      <source>&amp;Answers</source>
      <translation>&amp;Antworten</translation>
    </message>
    <message>
      <source>Answers</source>
      <translation>Antworten</translation>
    </message>
    <message>
      <source>Choose from four</source>
      <translation>Aus vieren wählen</translation>
    </message>
    <message>
      <source>Type</source>
      <translation>Tippen</translation>
    </message>
    <message>
      <source>&amp;Marked with</source>
      <translation>&amp;Markiert mit</translation>
    </message>
    <message>
      <source>Marked with</source>
      <translation>Markiert mit</translation>
    </message>
    <message>
      <source>A pin</source>
      <translation>Einer Nadel</translation>
    </message>
    <message>
      <source>A tint</source>
      <translation>Einer Tönung</translation>
    </message>
    <message>
      <source>The &amp;donor</source>
      <translation>Körper&amp;spende</translation>
    </message>
    <message>
      <source>The donor</source>
      <translation>Körperspende</translation>
    </message>
    <message>
      <source>On the table, too</source>
      <translation>Auch auf dem Tisch</translation>
    </message>
    <message>
      <source>E&amp;xplained</source>
      <translation>&amp;Erklärt</translation>
    </message>
    <message>
      <source>Answers explained</source>
      <translation>Antworten erklärt</translation>
    </message>
    <message>
      <source>After each question</source>
      <translation>Nach jeder Frage</translation>
    </message>
    <message>
      <source>At the end</source>
      <translation>Am Ende</translation>
    </message>
    <message>
      <source>S&amp;tations of</source>
      <translation>S&amp;tationen von</translation>
    </message>
    <message>
      <source>Seconds at a station</source>
      <translation>Sekunden an einer Station</translation>
    </message>
    <message>
      <source>The &amp;bell can be heard</source>
      <translation>Die &amp;Glocke ist zu hören</translation>
    </message>
    <message>
      <source>Strata</source>
      <translation>Schichten</translation>
    </message>
    <message>
      <source>All: strata</source>
      <translation>Alle: Schichten</translation>
    </message>
    <message>
      <source>All</source>
      <translation>Alle</translation>
    </message>
    <message>
      <source>None: strata</source>
      <translation>Keine: Schichten</translation>
    </message>
    <message>
      <source>None</source>
      <translation>Keine</translation>
    </message>
    <message>
      <source>Kinds</source>
      <translation>Arten</translation>
    </message>
    <message>
      <source>Kinds of question</source>
      <translation>Arten von Fragen</translation>
    </message>
    <message>
      <source>All: kinds</source>
      <translation>Alle: Arten</translation>
    </message>
    <message>
      <source>None: kinds</source>
      <translation>Keine: Arten</translation>
    </message>
    <message>
      <source>What there is to ask</source>
      <translation>Was gefragt werden kann</translation>
    </message>
    <message>
      <source>Choose a learner, a stratum and a kind of question at least.</source>
      <translation>Wählen Sie mindestens Lernende, eine Schicht und eine Art von Frage.</translation>
    </message>
    <message>
      <source>Begin</source>
      <translation>Beginnen</translation>
    </message>
    <message>
      <source>My note on the part…</source>
      <translation>Meine Notiz zum Teil …</translation>
    </message>
    <message>
      <source>A note of your own, shown in the caption of the part</source>
      <translation>Eine eigene Notiz, sie steht in der Legende des Teils</translation>
    </message>
    <message>
      <source>My note on the part</source>
      <translation>Meine Notiz zum Teil</translation>
    </message>
    <message>
      <source>My notes…</source>
      <translation>Meine Notizen …</translation>
    </message>
    <message>
      <source>My notes</source>
      <translation>Meine Notizen</translation>
    </message>
    <message>
      <source>{count} structures can be asked about, in {ways} ways.</source>
      <translation>{count} Strukturen können gefragt werden, auf {ways} Arten.</translation>
    </message>
    <message>
      <source>Pick a part first: the note is shown in its caption.</source>
      <translation>Wählen Sie zuerst einen Teil: Die Notiz steht dann in seiner Legende.</translation>
    </message>
    <message>
      <source>Nothing can be asked of this; choose more strata or kinds.</source>
      <translation>Hierzu kann nichts gefragt werden; wählen Sie mehr Schichten oder Arten.</translation>
    </message>
    <message>
      <source>Due and coming first: {count}.</source>
      <translation>Fällig und zuerst: {count}.</translation>
    </message>
    <message>
      <source>The note was not kept: {why}.</source>
      <translation>Die Notiz wurde nicht gespeichert: {why}.</translation>
    </message>
    <message>
      <source>{right} of {answers} answers right; {due} cards are due.</source>
      <translation>{right} von {answers} Antworten richtig; {due} Karten sind fällig.</translation>
    </message>
    <message>
      <source>Delete {name} with {count} answers and {notes} notes? There is no way back.</source>
      <translation>{name} mit {count} Antworten und {notes} Notizen löschen? Das lässt sich nicht rückgängig machen.</translation>
    </message>
    <message>
      <source>Saved {name}</source>
      <translation>{name} gespeichert</translation>
    </message>
    <message>
      <source>now</source>
      <translation>jetzt</translation>
    </message>
    <message>
      <source>No question has been answered yet.</source>
      <translation>Noch wurde keine Frage beantwortet.</translation>
    </message>
    <message>
      <source>Weak, under 80 %: {strata}.</source>
      <translation>Schwach, unter 80 %: {strata}.</translation>
    </message>
    <message>
      <source>{path} cannot be written: {why}</source>
      <translation>{path} kann nicht geschrieben werden: {why}</translation>
    </message>
    <message>
      <source>The whole back.</source>
      <translation>Der ganze Rücken.</translation>
    </message>
    <message>
      <source>Comes again in {days} days.</source>
      <translation>Kommt in {days} Tagen wieder.</translation>
    </message>
    <message>
      <source>Question {k} of {count}</source>
      <translation>Frage {k} von {count}</translation>
    </message>
    <message>
      <source>The lower half is taken away; you look up at the cut from the feet.</source>
      <translation>Die untere Hälfte ist weggenommen; Sie sehen von den Füßen her auf den Schnitt.</translation>
    </message>
    <message>
      <source>Peeled to stratum {n} ({name}).</source>
      <translation>Abgetragen bis Schicht {n} ({name}).</translation>
    </message>
    <message>
      <source>Comes again later today.</source>
      <translation>Kommt heute noch einmal.</translation>
    </message>
    <message>
      <source>Comes again tomorrow.</source>
      <translation>Kommt morgen wieder.</translation>
    </message>
    <message>
      <source>Nothing that was chosen can be asked: choose more strata or kinds.</source>
      <translation>Von dem, was gewählt wurde, kann nichts gefragt werden: Wählen Sie mehr Schichten oder Arten.</translation>
    </message>
    <message>
      <source>A little more is taken away.</source>
      <translation>Etwas mehr ist weggenommen.</translation>
    </message>
    <message>
      <source>Under the pin</source>
      <translation>Unter der Nadel</translation>
    </message>
    <message>
      <source>From the skin inwards</source>
      <translation>Von der Haut nach innen</translation>
    </message>
    <message>
      <source>There was no more to ask within what was chosen.</source>
      <translation>Mehr gab es zu dem, was gewählt wurde, nicht zu fragen.</translation>
    </message>
    <message>
      <source>Right; it is written {name}.</source>
      <translation>Richtig; geschrieben wird es {name}.</translation>
    </message>
    <message>
      <source>No answer. It is {name}.</source>
      <translation>Keine Antwort. Es ist: {name}.</translation>
    </message>
    <message>
      <source>No: it is {name}.</source>
      <translation>Nein: Es ist {name}.</translation>
    </message>
    <message>
      <source>Close, but no: it is {name}.</source>
      <translation>Fast, aber nein: Es ist {name}.</translation>
    </message>
    <message>
      <source>The structure is right, the side is not: {name}.</source>
      <translation>Die Struktur stimmt, die Seite nicht: {name}.</translation>
    </message>
    <message>
      <source>The structure is right, the level is not: {name}.</source>
      <translation>Die Struktur stimmt, die Höhe nicht: {name}.</translation>
    </message>
    <message>
      <source>The structure is right, but at which level: {name}.</source>
      <translation>Die Struktur stimmt, aber in welcher Höhe: {name}.</translation>
    </message>
    <message>
      <source>It has no level: {name}.</source>
      <translation>Es hat keine Höhe: {name}.</translation>
    </message>
    <message>
      <source>Right: {name}.</source>
      <translation>Richtig: {name}.</translation>
    </message>
    <message>
      <source>Section at {place}.</source>
      <translation>Schnitt bei {place}.</translation>
    </message>
    <message>
      <source>A level section.</source>
      <translation>Ein waagerechter Schnitt.</translation>
    </message>
    <message>
      <source>Point to {name}: click on its area.</source>
      <translation>Zeigen Sie auf {name}: Klicken Sie auf die Fläche.</translation>
    </message>
    <message>
      <source>Name the marked area.</source>
      <translation>Benennen Sie die markierte Fläche.</translation>
    </message>
    <message>
      <source>Which of these does the tagged structure do?</source>
      <translation>Was davon bewirkt die markierte Struktur?</translation>
    </message>
    <message>
      <source>The pin stands on {name}. What lies directly deep to it there?</source>
      <translation>Die Nadel steht auf: {name}. Was liegt dort unmittelbar darunter?</translation>
    </message>
    <message>
      <source>The tag is on {name}. Of which side of the donor?</source>
      <translation>Die Markierung steht auf: {name}. Auf welcher Seite des Körpers?</translation>
    </message>
    <message>
      <source>Name the tagged structure.</source>
      <translation>Benennen Sie die markierte Struktur.</translation>
    </message>
    <message>
      <source>{bone}: which level carries the tag?</source>
      <translation>{bone}: Welche Höhe trägt die Markierung?</translation>
    </message>
    <message>
      <source>Point to {name}: click on it.</source>
      <translation>Zeigen Sie auf {name}: Klicken Sie darauf.</translation>
    </message>
    <message>
      <source>Put these in order under the pin, from the skin inwards.</source>
      <translation>Ordnen Sie, was unter der Nadel liegt, von der Haut nach innen.</translation>
    </message>
    <message>
      <source>{right} of {count} right.</source>
      <translation>{right} von {count} richtig.</translation>
    </message>
    <message>
      <source>No question was answered.</source>
      <translation>Keine Frage wurde beantwortet.</translation>
    </message>
    <message>
      <source>You pointed to {name}.</source>
      <translation>Sie haben auf {name} gezeigt.</translation>
    </message>
    <message>
      <source>To look at again: {names}.</source>
      <translation>Noch einmal anzusehen: {names}.</translation>
    </message>
    <message>
      <source>My note</source>
      <translation>Meine Notiz</translation>
    </message>
    <message>
      <source>Which nerve supplies the tagged structure?</source>
      <translation>Welcher Nerv versorgt die markierte Struktur?</translation>
    </message>
    <message>
      <source>Which artery supplies the tagged structure?</source>
      <translation>Welche Arterie versorgt die markierte Struktur?</translation>
    </message>
    <message>
      <source>&amp;Delete learner…</source>
      <translation>Lernende &amp;löschen …</translation>
    </message>
    <message>
      <source>How it stands</source>
      <translation>Wie es steht</translation>
    </message>
    <message>
      <source>Tables</source>
      <translation>Tabellen</translation>
    </message>
    <message>
      <source>By stratum</source>
      <translation>Nach Schichten</translation>
    </message>
    <message>
      <source>Weakest parts</source>
      <translation>Schwächste Teile</translation>
    </message>
    <message>
      <source>Comes next</source>
      <translation>Kommt als Nächstes</translation>
    </message>
    <message>
      <source>When</source>
      <translation>Wann</translation>
    </message>
    <message>
      <source>Kind of question</source>
      <translation>Art der Frage</translation>
    </message>
    <message>
      <source>Due</source>
      <translation>Fällig</translation>
    </message>
    <message>
      <source>Stratum</source>
      <translation>Schicht</translation>
    </message>
    <message>
      <source>Scroll Left</source>
      <translation>Nach links</translation>
    </message>
    <message>
      <source>Scroll Right</source>
      <translation>Nach rechts</translation>
    </message>
    <message>
      <source>Kept on this computer only, in a file of this program.</source>
      <translation>Nur auf diesem Computer, in einer Datei dieses Programms.</translation>
    </message>
    <message>
      <source>A tag test; what is due comes first</source>
      <translation>Eine Stationenprüfung; Fälliges kommt zuerst</translation>
    </message>
    <message>
      <source>&amp;Practise…</source>
      <translation>&amp;Üben …</translation>
    </message>
    <message>
      <source>&amp;Export CSV…</source>
      <translation>CSV &amp;ausgeben …</translation>
    </message>
    <message>
      <source>Parts with a note</source>
      <translation>Teile mit einer Notiz</translation>
    </message>
    <message>
      <source>No notes yet: pick a part and press Y.</source>
      <translation>Noch keine Notizen: Wählen Sie einen Teil und drücken Sie Y.</translation>
    </message>
    <message>
      <source>Words of the note</source>
      <translation>Wortlaut der Notiz</translation>
    </message>
    <message>
      <source>&amp;Keep</source>
      <translation>&amp;Behalten</translation>
    </message>
    <message>
      <source>&amp;Take out</source>
      <translation>&amp;Herausnehmen</translation>
    </message>
    <message>
      <source>&amp;Go there</source>
      <translation>&amp;Dorthin</translation>
    </message>
    <message>
      <source>Take-home lab…</source>
      <translation>Präparieren zu Hause …</translation>
    </message>
    <message>
      <source>Every step of the plan by oneself: draw each cut, see what it would lose, fold</source>
      <translation>Jeder Schritt des Plans allein: jeden Schnitt zeichnen, sehen, was er kosten würde, umklappen</translation>
    </message>
    <message>
      <source>Take-home lab</source>
      <translation>Präparieren zu Hause</translation>
    </message>
    <message>
      <source>{count} kept steps of the lab could not be read.</source>
      <translation>{count} gespeicherte Schritte konnten nicht gelesen werden.</translation>
    </message>
    <message>
      <source>{done} of {count} steps</source>
      <translation>{done} von {count} Schritten</translation>
    </message>
    <message>
      <source>Fold, and go on</source>
      <translation>Umklappen und weiter</translation>
    </message>
    <message>
      <source>Done, go on</source>
      <translation>Fertig, weiter</translation>
    </message>
    <message>
      <source>Go on without the rest</source>
      <translation>Ohne den Rest weiter</translation>
    </message>
    <message>
      <source>{points} points</source>
      <translation>{points} Punkte</translation>
    </message>
    <message>
      <source>All steps of this side are done; the summary is shown.</source>
      <translation>Alle Schritte dieser Seite sind getan; die Übersicht wird gezeigt.</translation>
    </message>
    <message>
      <source>Goes on where it was left: {done} of {count} steps.</source>
      <translation>Geht weiter, wo es verlassen wurde: {done} von {count} Schritten.</translation>
    </message>
    <message>
      <source>Begins with the whole back.</source>
      <translation>Beginnt mit dem ganzen Rücken.</translation>
    </message>
    <message>
      <source>Lines to draw</source>
      <translation>Zu zeichnende Linien</translation>
    </message>
    <message>
      <source>Step {k} of {count}, {side}</source>
      <translation>Schritt {k} von {count}, {side}</translation>
    </message>
    <message>
      <source>{points} points.</source>
      <translation>{points} Punkte.</translation>
    </message>
    <message>
      <source>{done} of {count} steps done.</source>
      <translation>{done} von {count} Schritten getan.</translation>
    </message>
    <message>
      <source>In view now: {names}.</source>
      <translation>Jetzt zu sehen: {names}.</translation>
    </message>
    <message>
      <source>Click along the next line.</source>
      <translation>Klicken Sie entlang der nächsten Linie.</translation>
    </message>
    <message>
      <source>Click along the line in the picture; Ctrl with the arrows and Enter do, too.</source>
      <translation>Klicken Sie im Bild entlang der Linie; Strg mit den Pfeilen und die Eingabetaste tun es auch.</translation>
    </message>
    <message>
      <source>This step cuts nothing: look, free, and go on.</source>
      <translation>Dieser Schritt schneidet nichts: ansehen, freilegen, weitergehen.</translation>
    </message>
    <message>
      <source>That is {part}; this step cuts {wanted}.</source>
      <translation>Das ist {part}; dieser Schritt schneidet {wanted}.</translation>
    </message>
    <message>
      <source>A cut needs two places at least.</source>
      <translation>Ein Schnitt braucht mindestens zwei Stellen.</translation>
    </message>
    <message>
      <source>Summary, {side}</source>
      <translation>Übersicht, {side}</translation>
    </message>
    <message>
      <source>{points} points of 100 on the mean.</source>
      <translation>{points} von 100 Punkten im Mittel.</translation>
    </message>
    <message>
      <source>Lost: {names}</source>
      <translation>Verloren: {names}</translation>
    </message>
    <message>
      <source>The step was not kept: {why}.</source>
      <translation>Der Schritt wurde nicht gespeichert: {why}.</translation>
    </message>
    <message>
      <source>The blade does not go through</source>
      <translation>Die Klinge geht nicht hindurch</translation>
    </message>
    <message>
      <source>The layer is {mm} mm thick here.</source>
      <translation>Die Schicht ist hier {mm} mm dick.</translation>
    </message>
    <message>
      <source>Step</source>
      <translation>Schritt</translation>
    </message>
    <message>
      <source>Lines</source>
      <translation>Linien</translation>
    </message>
    <message>
      <source>Points</source>
      <translation>Punkte</translation>
    </message>
    <message>
      <source>Points on a scale of our own: half for what must stay, three tenths for the plan's line, two tenths for the depth of the blade.</source>
      <translation>Punkte nach eigenem Maß: die Hälfte für das, was bleiben muss, drei Zehntel für die Linie des Plans, zwei Zehntel für die Tiefe der Klinge.</translation>
    </message>
    <message>
      <source>Steps done</source>
      <translation>Getane Schritte</translation>
    </message>
    <message>
      <source>How the lab went</source>
      <translation>Wie das Präparieren lief</translation>
    </message>
    <message>
      <source>Back to the steps</source>
      <translation>Zurück zu den Schritten</translation>
    </message>
    <message>
      <source>Export CSV…</source>
      <translation>CSV ausgeben …</translation>
    </message>
    <message>
      <source>Save PDF…</source>
      <translation>PDF sichern …</translation>
    </message>
    <message>
      <source>Begin anew…</source>
      <translation>Neu beginnen …</translation>
    </message>
    <message>
      <source>Leave</source>
      <translation>Verlassen</translation>
    </message>
    <message>
      <source>What to do</source>
      <translation>Was zu tun ist</translation>
    </message>
    <message>
      <source>Hand this line in and see what it would lose</source>
      <translation>Diese Linie abgeben und sehen, was sie kosten würde</translation>
    </message>
    <message>
      <source>&amp;Cut here</source>
      <translation>&amp;Hier schneiden</translation>
    </message>
    <message>
      <source>Backspace</source>
      <translation>Rücktaste</translation>
    </message>
    <message>
      <source>Last &amp;point back</source>
      <translation>Letzten &amp;Punkt zurück</translation>
    </message>
    <message>
      <source>Try &amp;again</source>
      <translation>&amp;Noch einmal</translation>
    </message>
    <message>
      <source>What the table sees</source>
      <translation>Was der Tisch sieht</translation>
    </message>
    <message>
      <source>Step before</source>
      <translation>Schritt zurück</translation>
    </message>
    <message>
      <source>Summary</source>
      <translation>Übersicht</translation>
    </message>
    <message>
      <source>All is kept; the lab goes on where it was left</source>
      <translation>Alles bleibt gespeichert; es geht weiter, wo Sie aufhören</translation>
    </message>
    <message>
      <source>Where you are</source>
      <translation>Wo Sie stehen</translation>
    </message>
    <message>
      <source>I have read this: begin</source>
      <translation>Gelesen: beginnen</translation>
    </message>
    <message>
      <source>Arms and blades as they lie; layers as standing</source>
      <translation>Arme und Schulterblätter wie im Liegen; Schichten wie stehend</translation>
    </message>
    <message>
      <source>Pin: {words}</source>
      <translation>Nadel: {words}</translation>
    </message>
    <message>
      <source>Paused</source>
      <translation>Pause</translation>
    </message>
    <message>
      <source>End the test here? What was answered is kept.</source>
      <translation>Die Prüfung hier beenden? Was beantwortet wurde, bleibt gespeichert.</translation>
    </message>
    <message>
      <source>End it</source>
      <translation>Beenden</translation>
    </message>
    <message>
      <source>Go on</source>
      <translation>Weiter</translation>
    </message>
    <message>
      <source>Shows it on the model</source>
      <translation>Zeigt es am Modell</translation>
    </message>
    <message>
      <source>right answer</source>
      <translation>richtige Antwort</translation>
    </message>
    <message>
      <source>your answer</source>
      <translation>Ihre Antwort</translation>
    </message>
    <message>
      <source>Begin this side anew? What was drawn on it is dropped.</source>
      <translation>Diese Seite neu beginnen? Was auf ihr gezeichnet wurde, wird verworfen.</translation>
    </message>
    <message>
      <source>Begin anew</source>
      <translation>Neu beginnen</translation>
    </message>
    <message>
      <source>Every scene shows what it should on this model.</source>
      <translation>Jede Szene zeigt an diesem Modell, was sie soll.</translation>
    </message>
    <message>
      <source>Title and line</source>
      <translation>Titel und Zeile</translation>
    </message>
    <message>
      <source>Part pointed at</source>
      <translation>Gezeigter Teil</translation>
    </message>
    <message>
      <source>, this one</source>
      <translation>, dieser</translation>
    </message>
    <message>
      <source>Page Down or → next, Page Up or ← before, number: scene, B or . blank, D pen, C clear, S spotlight, R back to the scene, Esc end. All in Help.</source>
      <translation>Bild ab oder → weiter, Bild auf oder ← zurück, Zahl: Szene, B oder . schwarz, D Stift, C wischen, S Lichtkegel, R zurück zur Szene, Esc Ende. Alles in der Hilfe.</translation>
    </message>
    <message>
      <source>Keys</source>
      <translation>Tasten</translation>
    </message>
    <message>
      <source>Room</source>
      <translation>Raum</translation>
    </message>
    <message>
      <source>Scenes</source>
      <translation>Szenen</translation>
    </message>
    <message>
      <source>not saved yet</source>
      <translation>noch nicht gespeichert</translation>
    </message>
    <message>
      <source>nothing is shown</source>
      <translation>nichts ist zu sehen</translation>
    </message>
    <message>
      <source>no notes</source>
      <translation>keine Notizen</translation>
    </message>
    <message>
      <source>{what}: contrast {ratio} to 1</source>
      <translation>{what}: Kontrast {ratio} zu 1</translation>
    </message>
    <message>
      <source>too small: {least}′ is the least</source>
      <translation>zu klein: mindestens {least}′</translation>
    </message>
    <message>
      <source>{what}: capitals {px} px = {mm} mm, {angle}′ from {distance} m: {verdict}</source>
      <translation>{what}: Großbuchstaben {px} px = {mm} mm, {angle}′ aus {distance} m: {verdict}</translation>
    </message>
    <message>
      <source>, {ratio} to 1 with the room's light ({share} of the white)</source>
      <translation>, {ratio} zu 1 mit dem Licht des Raums ({share} vom Weiß)</translation>
    </message>
    <message>
      <source>: too little, {least} to 1 is the least</source>
      <translation>: zu wenig, mindestens {least} zu 1</translation>
    </message>
    <message>
      <source>readable, {low} to {high}′ is better</source>
      <translation>lesbar, {low} bis {high}′ sind besser</translation>
    </message>
    <message>
      <source>good</source>
      <translation>gut</translation>
    </message>
    <message>
      <source>head</source>
      <translation>Kopf</translation>
    </message>
    <message>
      <source>neck</source>
      <translation>Hals</translation>
    </message>
    <message>
      <source>thorax</source>
      <translation>Brustkorb</translation>
    </message>
    <message>
      <source>loin</source>
      <translation>Lende</translation>
    </message>
    <message>
      <source>pelvis</source>
      <translation>Becken</translation>
    </message>
    <message>
      <source>shoulder</source>
      <translation>Schulter</translation>
    </message>
    <message>
      <source>arm</source>
      <translation>Arm</translation>
    </message>
    <message>
      <source>whole back</source>
      <translation>ganzer Rücken</translation>
    </message>
    <message>
      <source>Teaching model: never for needle or surgical guidance. Say so in the hall.</source>
      <translation>Lehrmodell: nie zur Führung von Nadel oder Messer. Sagen Sie das im Saal.</translation>
    </message>
    <message>
      <source>The model stands; a donor lies prone, and the shoulder blade then sits elsewhere.</source>
      <translation>Das Modell steht; wer auf dem Tisch liegt, liegt auf dem Bauch, und das Schulterblatt sitzt dann anders.</translation>
    </message>
    <message>
      <source>Nothing of a donor is shown. Local rules come first.</source>
      <translation>Von keinem Körperspender wird etwas gezeigt. Die Regeln vor Ort gehen vor.</translation>
    </message>
    <message>
      <source>The layer is loosened and lifted first: the blade goes through it and no further</source>
      <translation>Die Schicht wird erst gelöst und angehoben: Die Klinge geht durch sie und nicht weiter</translation>
    </message>
    <message>
      <source>A &amp;finger underneath</source>
      <translation>Ein &amp;Finger darunter</translation>
    </message>
    <message>
      <source>atlas (C1)</source>
      <translation>Atlas (C1)</translation>
    </message>
    <message>
      <source>axis (C2)</source>
      <translation>Axis (C2)</translation>
    </message>
    <message>
      <source>third cervical vertebra (C3)</source>
      <translation>3. Halswirbel (C3)</translation>
    </message>
    <message>
      <source>fourth cervical vertebra (C4)</source>
      <translation>4. Halswirbel (C4)</translation>
    </message>
    <message>
      <source>fifth cervical vertebra (C5)</source>
      <translation>5. Halswirbel (C5)</translation>
    </message>
    <message>
      <source>sixth cervical vertebra (C6)</source>
      <translation>6. Halswirbel (C6)</translation>
    </message>
    <message>
      <source>vertebra prominens (C7)</source>
      <translation>Vertebra prominens (C7)</translation>
    </message>
    <message>
      <source>first thoracic vertebra (T1)</source>
      <translation>1. Brustwirbel (T1)</translation>
    </message>
    <message>
      <source>second thoracic vertebra (T2)</source>
      <translation>2. Brustwirbel (T2)</translation>
    </message>
    <message>
      <source>third thoracic vertebra (T3)</source>
      <translation>3. Brustwirbel (T3)</translation>
    </message>
    <message>
      <source>fourth thoracic vertebra (T4)</source>
      <translation>4. Brustwirbel (T4)</translation>
    </message>
    <message>
      <source>fifth thoracic vertebra (T5)</source>
      <translation>5. Brustwirbel (T5)</translation>
    </message>
    <message>
      <source>sixth thoracic vertebra (T6)</source>
      <translation>6. Brustwirbel (T6)</translation>
    </message>
    <message>
      <source>seventh thoracic vertebra (T7)</source>
      <translation>7. Brustwirbel (T7)</translation>
    </message>
    <message>
      <source>eighth thoracic vertebra (T8)</source>
      <translation>8. Brustwirbel (T8)</translation>
    </message>
    <message>
      <source>ninth thoracic vertebra (T9)</source>
      <translation>9. Brustwirbel (T9)</translation>
    </message>
    <message>
      <source>tenth thoracic vertebra (T10)</source>
      <translation>10. Brustwirbel (T10)</translation>
    </message>
    <message>
      <source>eleventh thoracic vertebra (T11)</source>
      <translation>11. Brustwirbel (T11)</translation>
    </message>
    <message>
      <source>twelfth thoracic vertebra (T12)</source>
      <translation>12. Brustwirbel (T12)</translation>
    </message>
    <message>
      <source>first lumbar vertebra (L1)</source>
      <translation>1. Lendenwirbel (L1)</translation>
    </message>
    <message>
      <source>second lumbar vertebra (L2)</source>
      <translation>2. Lendenwirbel (L2)</translation>
    </message>
    <message>
      <source>third lumbar vertebra (L3)</source>
      <translation>3. Lendenwirbel (L3)</translation>
    </message>
    <message>
      <source>fourth lumbar vertebra (L4)</source>
      <translation>4. Lendenwirbel (L4)</translation>
    </message>
    <message>
      <source>fifth lumbar vertebra (L5)</source>
      <translation>5. Lendenwirbel (L5)</translation>
    </message>
    <message>
      <source>disc between {upper} and {lower}</source>
      <translation>Bandscheibe zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>sacrum</source>
      <translation>Os sacrum</translation>
    </message>
    <message>
      <source>coccyx</source>
      <translation>Os coccygis</translation>
    </message>
    <message>
      <source>first rib</source>
      <translation>1. Rippe</translation>
    </message>
    <message>
      <source>second rib</source>
      <translation>2. Rippe</translation>
    </message>
    <message>
      <source>third rib</source>
      <translation>3. Rippe</translation>
    </message>
    <message>
      <source>fourth rib</source>
      <translation>4. Rippe</translation>
    </message>
    <message>
      <source>fifth rib</source>
      <translation>5. Rippe</translation>
    </message>
    <message>
      <source>sixth rib</source>
      <translation>6. Rippe</translation>
    </message>
    <message>
      <source>seventh rib</source>
      <translation>7. Rippe</translation>
    </message>
    <message>
      <source>eighth rib</source>
      <translation>8. Rippe</translation>
    </message>
    <message>
      <source>ninth rib</source>
      <translation>9. Rippe</translation>
    </message>
    <message>
      <source>tenth rib</source>
      <translation>10. Rippe</translation>
    </message>
    <message>
      <source>eleventh rib</source>
      <translation>11. Rippe</translation>
    </message>
    <message>
      <source>twelfth rib</source>
      <translation>12. Rippe</translation>
    </message>
    <message>
      <source>costal cartilage</source>
      <translation>Rippenknorpel</translation>
    </message>
    <message>
      <source>costal cartilage of rib {level}</source>
      <translation>Rippenknorpel der {level}. Rippe</translation>
    </message>
    <message>
      <source>sternum</source>
      <translation>Sternum</translation>
    </message>
    <message>
      <source>scapula</source>
      <translation>Scapula</translation>
    </message>
    <message>
      <source>clavicle</source>
      <translation>Clavicula</translation>
    </message>
    <message>
      <source>humerus</source>
      <translation>Humerus</translation>
    </message>
    <message>
      <source>hip bone</source>
      <translation>Os coxae</translation>
    </message>
    <message>
      <source>cranium, posterior part</source>
      <translation>Schädel, hinterer Teil</translation>
    </message>
    <message>
      <source>mandible</source>
      <translation>Mandibula</translation>
    </message>
    <message>
      <source>femur, upper part</source>
      <translation>Femur, oberer Teil</translation>
    </message>
    <message>
      <source>nuchal ligament</source>
      <translation>Lig. nuchae</translation>
    </message>
    <message>
      <source>supraspinous ligament</source>
      <translation>Lig. supraspinale</translation>
    </message>
    <message>
      <source>interspinous ligaments</source>
      <translation>Ligg. interspinalia</translation>
    </message>
    <message>
      <source>interspinous ligament between {upper} and {lower}</source>
      <translation>Lig. interspinale zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>ligamenta flava</source>
      <translation>Ligg. flava</translation>
    </message>
    <message>
      <source>ligamentum flavum between {upper} and {lower}</source>
      <translation>Lig. flavum zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>intertransverse ligaments</source>
      <translation>Ligg. intertransversaria</translation>
    </message>
    <message>
      <source>intertransverse ligament between {upper} and {lower}</source>
      <translation>Lig. intertransversarium zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>superior costotransverse ligaments</source>
      <translation>Ligg. costotransversaria superiora</translation>
    </message>
    <message>
      <source>superior costotransverse ligament of rib {level}</source>
      <translation>Lig. costotransversarium superius der {level}. Rippe</translation>
    </message>
    <message>
      <source>zygapophysial joints</source>
      <translation>Artt. zygapophysiales</translation>
    </message>
    <message>
      <source>zygapophysial joint between {upper} and {lower}</source>
      <translation>Art. zygapophysialis zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>anterior longitudinal ligament</source>
      <translation>Lig. longitudinale anterius</translation>
    </message>
    <message>
      <source>posterior longitudinal ligament</source>
      <translation>Lig. longitudinale posterius</translation>
    </message>
    <message>
      <source>iliolumbar ligament</source>
      <translation>Lig. iliolumbale</translation>
    </message>
    <message>
      <source>lumbocostal ligament</source>
      <translation>Lig. lumbocostale</translation>
    </message>
    <message>
      <source>posterior sacroiliac ligament</source>
      <translation>Lig. sacroiliacum posterius</translation>
    </message>
    <message>
      <source>sacrotuberous ligament</source>
      <translation>Lig. sacrotuberale</translation>
    </message>
    <message>
      <source>posterior atlanto-occipital membrane</source>
      <translation>Membrana atlantooccipitalis posterior</translation>
    </message>
    <message>
      <source>superficial fascia of the back</source>
      <translation>Oberflächliche Faszie des Rückens</translation>
    </message>
    <message>
      <source>deep fascia of the back</source>
      <translation>Tiefe Faszie des Rückens</translation>
    </message>
    <message>
      <source>nuchal fascia</source>
      <translation>Fascia nuchae</translation>
    </message>
    <message>
      <source>thoracolumbar fascia, posterior layer</source>
      <translation>Fascia thoracolumbalis, Lamina posterior</translation>
    </message>
    <message>
      <source>thoracolumbar fascia, middle layer</source>
      <translation>Fascia thoracolumbalis, Lamina media</translation>
    </message>
    <message>
      <source>lateral raphe</source>
      <translation>laterale Raphe</translation>
    </message>
    <message>
      <source>erector spinae aponeurosis</source>
      <translation>Aponeurose des M. erector spinae</translation>
    </message>
    <message>
      <source>transversus abdominis, aponeurosis of origin</source>
      <translation>M. transversus abdominis, Ursprungsaponeurose</translation>
    </message>
    <message>
      <source>trapezius, descending part</source>
      <translation>M. trapezius, Pars descendens</translation>
    </message>
    <message>
      <source>trapezius, transverse part</source>
      <translation>M. trapezius, Pars transversa</translation>
    </message>
    <message>
      <source>trapezius, ascending part</source>
      <translation>M. trapezius, Pars ascendens</translation>
    </message>
    <message>
      <source>latissimus dorsi</source>
      <translation>M. latissimus dorsi</translation>
    </message>
    <message>
      <source>deltoid</source>
      <translation>M. deltoideus</translation>
    </message>
    <message>
      <source>sternocleidomastoid</source>
      <translation>M. sternocleidomastoideus</translation>
    </message>
    <message>
      <source>external oblique</source>
      <translation>M. obliquus externus abdominis</translation>
    </message>
    <message>
      <source>gluteus maximus</source>
      <translation>M. gluteus maximus</translation>
    </message>
    <message>
      <source>levator scapulae</source>
      <translation>M. levator scapulae</translation>
    </message>
    <message>
      <source>rhomboid minor</source>
      <translation>M. rhomboideus minor</translation>
    </message>
    <message>
      <source>rhomboid major</source>
      <translation>M. rhomboideus major</translation>
    </message>
    <message>
      <source>supraspinatus</source>
      <translation>M. supraspinatus</translation>
    </message>
    <message>
      <source>infraspinatus</source>
      <translation>M. infraspinatus</translation>
    </message>
    <message>
      <source>teres minor</source>
      <translation>M. teres minor</translation>
    </message>
    <message>
      <source>teres major</source>
      <translation>M. teres major</translation>
    </message>
    <message>
      <source>triceps brachii, long head</source>
      <translation>M. triceps brachii, Caput longum</translation>
    </message>
    <message>
      <source>internal oblique</source>
      <translation>M. obliquus internus abdominis</translation>
    </message>
    <message>
      <source>gluteus medius</source>
      <translation>M. gluteus medius</translation>
    </message>
    <message>
      <source>serratus posterior superior</source>
      <translation>M. serratus posterior superior</translation>
    </message>
    <message>
      <source>serratus posterior inferior</source>
      <translation>M. serratus posterior inferior</translation>
    </message>
    <message>
      <source>serratus anterior</source>
      <translation>M. serratus anterior</translation>
    </message>
    <message>
      <source>splenius capitis</source>
      <translation>M. splenius capitis</translation>
    </message>
    <message>
      <source>splenius cervicis</source>
      <translation>M. splenius cervicis</translation>
    </message>
    <message>
      <source>scalenus anterior</source>
      <translation>M. scalenus anterior</translation>
    </message>
    <message>
      <source>scalenus medius</source>
      <translation>M. scalenus medius</translation>
    </message>
    <message>
      <source>scalenus posterior</source>
      <translation>M. scalenus posterior</translation>
    </message>
    <message>
      <source>iliocostalis lumborum</source>
      <translation>M. iliocostalis lumborum</translation>
    </message>
    <message>
      <source>iliocostalis thoracis</source>
      <translation>M. iliocostalis thoracis</translation>
    </message>
    <message>
      <source>iliocostalis cervicis</source>
      <translation>M. iliocostalis cervicis</translation>
    </message>
    <message>
      <source>longissimus thoracis</source>
      <translation>M. longissimus thoracis</translation>
    </message>
    <message>
      <source>longissimus cervicis</source>
      <translation>M. longissimus cervicis</translation>
    </message>
    <message>
      <source>longissimus capitis</source>
      <translation>M. longissimus capitis</translation>
    </message>
    <message>
      <source>spinalis thoracis</source>
      <translation>M. spinalis thoracis</translation>
    </message>
    <message>
      <source>spinalis cervicis</source>
      <translation>M. spinalis cervicis</translation>
    </message>
    <message>
      <source>semispinalis capitis</source>
      <translation>M. semispinalis capitis</translation>
    </message>
    <message>
      <source>semispinalis cervicis</source>
      <translation>M. semispinalis cervicis</translation>
    </message>
    <message>
      <source>semispinalis thoracis</source>
      <translation>M. semispinalis thoracis</translation>
    </message>
    <message>
      <source>multifidus cervicis</source>
      <translation>M. multifidus cervicis</translation>
    </message>
    <message>
      <source>multifidus thoracis</source>
      <translation>M. multifidus thoracis</translation>
    </message>
    <message>
      <source>multifidus lumborum</source>
      <translation>M. multifidus lumborum</translation>
    </message>
    <message>
      <source>rotatores breves</source>
      <translation>Mm. rotatores breves</translation>
    </message>
    <message>
      <source>short rotator from {level} to {above}</source>
      <translation>M. rotator brevis von {level} nach {above}</translation>
    </message>
    <message>
      <source>rotatores longi</source>
      <translation>Mm. rotatores longi</translation>
    </message>
    <message>
      <source>long rotator from {level} to {above2}</source>
      <translation>M. rotator longus von {level} nach {above2}</translation>
    </message>
    <message>
      <source>interspinales cervicis</source>
      <translation>Mm. interspinales cervicis</translation>
    </message>
    <message>
      <source>interspinalis between {upper} and {lower}</source>
      <translation>M. interspinalis zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>interspinales lumborum</source>
      <translation>Mm. interspinales lumborum</translation>
    </message>
    <message>
      <source>anterior cervical intertransversarii</source>
      <translation>Mm. intertransversarii anteriores cervicis</translation>
    </message>
    <message>
      <source>anterior intertransversarius between {upper} and {lower}</source>
      <translation>M. intertransversarius anterior zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>posterior cervical intertransversarii</source>
      <translation>Mm. intertransversarii posteriores cervicis</translation>
    </message>
    <message>
      <source>posterior intertransversarius between {upper} and {lower}</source>
      <translation>M. intertransversarius posterior zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>medial lumbar intertransversarii</source>
      <translation>Mm. intertransversarii mediales lumborum</translation>
    </message>
    <message>
      <source>medial intertransversarius between {upper} and {lower}</source>
      <translation>M. intertransversarius medialis zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>lateral lumbar intertransversarii</source>
      <translation>Mm. intertransversarii laterales lumborum</translation>
    </message>
    <message>
      <source>lateral intertransversarius between {upper} and {lower}</source>
      <translation>M. intertransversarius lateralis zwischen {upper} und {lower}</translation>
    </message>
    <message>
      <source>levatores costarum breves</source>
      <translation>Mm. levatores costarum breves</translation>
    </message>
    <message>
      <source>short levator costae from {level} to rib {rib_below}</source>
      <translation>M. levator costae brevis von {level} zur {rib_below}. Rippe</translation>
    </message>
    <message>
      <source>levatores costarum longi</source>
      <translation>Mm. levatores costarum longi</translation>
    </message>
    <message>
      <source>long levator costae from {level} to rib {rib_below2}</source>
      <translation>M. levator costae longus von {level} zur {rib_below2}. Rippe</translation>
    </message>
    <message>
      <source>rectus capitis posterior major</source>
      <translation>M. rectus capitis posterior major</translation>
    </message>
    <message>
      <source>rectus capitis posterior minor</source>
      <translation>M. rectus capitis posterior minor</translation>
    </message>
    <message>
      <source>obliquus capitis inferior</source>
      <translation>M. obliquus capitis inferior</translation>
    </message>
    <message>
      <source>obliquus capitis superior</source>
      <translation>M. obliquus capitis superior</translation>
    </message>
    <message>
      <source>external intercostals</source>
      <translation>Mm. intercostales externi</translation>
    </message>
    <message>
      <source>external intercostal of space {level}</source>
      <translation>M. intercostalis externus des {level}. Zwischenrippenraums</translation>
    </message>
    <message>
      <source>quadratus lumborum</source>
      <translation>M. quadratus lumborum</translation>
    </message>
    <message>
      <source>psoas major</source>
      <translation>M. psoas major</translation>
    </message>
    <message>
      <source>accessory nerve</source>
      <translation>N. accessorius</translation>
    </message>
    <message>
      <source>branches of C3 and C4 to trapezius</source>
      <translation>Äste von C3 und C4 zum M. trapezius</translation>
    </message>
    <message>
      <source>dorsal scapular nerve</source>
      <translation>N. dorsalis scapulae</translation>
    </message>
    <message>
      <source>thoracodorsal nerve</source>
      <translation>N. thoracodorsalis</translation>
    </message>
    <message>
      <source>suprascapular nerve</source>
      <translation>N. suprascapularis</translation>
    </message>
    <message>
      <source>axillary nerve</source>
      <translation>N. axillaris</translation>
    </message>
    <message>
      <source>long thoracic nerve</source>
      <translation>N. thoracicus longus</translation>
    </message>
    <message>
      <source>greater occipital nerve</source>
      <translation>N. occipitalis major</translation>
    </message>
    <message>
      <source>third occipital nerve</source>
      <translation>N. occipitalis tertius</translation>
    </message>
    <message>
      <source>suboccipital nerve</source>
      <translation>N. suboccipitalis</translation>
    </message>
    <message>
      <source>lesser occipital nerve</source>
      <translation>N. occipitalis minor</translation>
    </message>
    <message>
      <source>great auricular nerve</source>
      <translation>N. auricularis magnus</translation>
    </message>
    <message>
      <source>spinal nerves</source>
      <translation>Nn. spinales</translation>
    </message>
    <message>
      <source>spinal nerve {level}</source>
      <translation>N. spinalis {level}</translation>
    </message>
    <message>
      <source>spinal ganglia</source>
      <translation>Ganglia spinalia</translation>
    </message>
    <message>
      <source>spinal ganglion {level}</source>
      <translation>Ganglion spinale {level}</translation>
    </message>
    <message>
      <source>spinal nerve roots</source>
      <translation>Wurzeln der Spinalnerven</translation>
    </message>
    <message>
      <source>roots of spinal nerve {level}</source>
      <translation>Wurzeln des N. spinalis {level}</translation>
    </message>
    <message>
      <source>posterior rami</source>
      <translation>Rami posteriores</translation>
    </message>
    <message>
      <source>posterior ramus of {level}</source>
      <translation>Ramus posterior von {level}</translation>
    </message>
    <message>
      <source>medial branches of posterior rami</source>
      <translation>Rami mediales der Rami posteriores</translation>
    </message>
    <message>
      <source>medial branch of the posterior ramus of {level}</source>
      <translation>Ramus medialis des Ramus posterior von {level}</translation>
    </message>
    <message>
      <source>lateral branches of posterior rami</source>
      <translation>Rami laterales der Rami posteriores</translation>
    </message>
    <message>
      <source>lateral branch of the posterior ramus of {level}</source>
      <translation>Ramus lateralis des Ramus posterior von {level}</translation>
    </message>
    <message>
      <source>posterior cutaneous branches</source>
      <translation>Rami cutanei posteriores</translation>
    </message>
    <message>
      <source>posterior cutaneous branch of {level}</source>
      <translation>Ramus cutaneus posterior von {level}</translation>
    </message>
    <message>
      <source>superior cluneal nerves</source>
      <translation>Nn. clunium superiores</translation>
    </message>
    <message>
      <source>superior cluneal nerve from {level}</source>
      <translation>N. clunium superior aus {level}</translation>
    </message>
    <message>
      <source>middle cluneal nerves</source>
      <translation>Nn. clunium medii</translation>
    </message>
    <message>
      <source>middle cluneal nerve from {level}</source>
      <translation>N. clunium medius aus {level}</translation>
    </message>
    <message>
      <source>intercostal nerves</source>
      <translation>Nn. intercostales</translation>
    </message>
    <message>
      <source>intercostal nerve {level}</source>
      <translation>N. intercostalis {level}</translation>
    </message>
    <message>
      <source>subcostal nerve</source>
      <translation>N. subcostalis</translation>
    </message>
    <message>
      <source>rami communicantes</source>
      <translation>Rami communicantes</translation>
    </message>
    <message>
      <source>ramus communicans of {level}</source>
      <translation>Ramus communicans von {level}</translation>
    </message>
    <message>
      <source>sympathetic trunk</source>
      <translation>Truncus sympathicus</translation>
    </message>
    <message>
      <source>sympathetic ganglia</source>
      <translation>Ganglia trunci sympathici</translation>
    </message>
    <message>
      <source>sympathetic ganglion of {level}</source>
      <translation>Ganglion trunci sympathici von {level}</translation>
    </message>
    <message>
      <source>occipital artery</source>
      <translation>A. occipitalis</translation>
    </message>
    <message>
      <source>transverse cervical artery, superficial branch</source>
      <translation>A. transversa cervicis, Ramus superficialis</translation>
    </message>
    <message>
      <source>dorsal scapular artery</source>
      <translation>A. dorsalis scapulae</translation>
    </message>
    <message>
      <source>dorsal scapular vein</source>
      <translation>V. dorsalis scapulae</translation>
    </message>
    <message>
      <source>suprascapular artery</source>
      <translation>A. suprascapularis</translation>
    </message>
    <message>
      <source>subscapular artery</source>
      <translation>A. subscapularis</translation>
    </message>
    <message>
      <source>circumflex scapular artery</source>
      <translation>A. circumflexa scapulae</translation>
    </message>
    <message>
      <source>thoracodorsal artery</source>
      <translation>A. thoracodorsalis</translation>
    </message>
    <message>
      <source>deep cervical artery</source>
      <translation>A. cervicalis profunda</translation>
    </message>
    <message>
      <source>vertebral artery</source>
      <translation>A. vertebralis</translation>
    </message>
    <message>
      <source>posterior intercostal arteries</source>
      <translation>Aa. intercostales posteriores</translation>
    </message>
    <message>
      <source>posterior intercostal artery {level}</source>
      <translation>A. intercostalis posterior {level}</translation>
    </message>
    <message>
      <source>subcostal artery</source>
      <translation>A. subcostalis</translation>
    </message>
    <message>
      <source>lumbar arteries</source>
      <translation>Aa. lumbales</translation>
    </message>
    <message>
      <source>lumbar artery {level}</source>
      <translation>A. lumbalis {level}</translation>
    </message>
    <message>
      <source>suboccipital venous plexus</source>
      <translation>Plexus venosus suboccipitalis</translation>
    </message>
    <message>
      <source>aorta</source>
      <translation>Aorta</translation>
    </message>
    <message>
      <source>azygos vein</source>
      <translation>V. azygos</translation>
    </message>
    <message>
      <source>spinal cord</source>
      <translation>Rückenmark</translation>
    </message>
    <message>
      <source>conus medullaris</source>
      <translation>Conus medullaris</translation>
    </message>
    <message>
      <source>cauda equina</source>
      <translation>Cauda equina</translation>
    </message>
    <message>
      <source>filum terminale</source>
      <translation>Filum terminale</translation>
    </message>
    <message>
      <source>spinal dura mater</source>
      <translation>Dura mater spinalis</translation>
    </message>
    <message>
      <source>spinal arachnoid mater</source>
      <translation>Arachnoidea mater spinalis</translation>
    </message>
    <message>
      <source>denticulate ligament</source>
      <translation>Lig. denticulatum</translation>
    </message>
    <message>
      <source>epidural fat</source>
      <translation>Epidurales Fett</translation>
    </message>
    <message>
      <source>internal vertebral venous plexus</source>
      <translation>Plexus venosus vertebralis internus</translation>
    </message>
    <message>
      <source>skin of the back</source>
      <translation>Rückenhaut</translation>
    </message>
    <message>
      <source>front of the trunk: not modelled here</source>
      <translation>Vorderseite des Rumpfes: hier nicht modelliert</translation>
    </message>
    <message>
      <source>triangle of auscultation</source>
      <translation>Trigonum auscultationis</translation>
    </message>
    <message>
      <source>inferior lumbar triangle</source>
      <translation>Trigonum lumbale inferius</translation>
    </message>
    <message>
      <source>superior lumbar triangle</source>
      <translation>Trigonum lumbale superius</translation>
    </message>
    <message>
      <source>suboccipital triangle</source>
      <translation>Trigonum suboccipitale</translation>
    </message>
    <message>
      <source>quadrangular space</source>
      <translation>Laterale Achsellücke</translation>
    </message>
    <message>
      <source>triangular space</source>
      <translation>Mediale Achsellücke</translation>
    </message>
    <message>
      <source>posterior triangle of the neck, back part</source>
      <translation>Seitliches Halsdreieck, hinterer Teil</translation>
    </message>
    <message>
      <source>vertebral groove beside the spines</source>
      <translation>Rinne neben den Dornfortsätzen</translation>
    </message>
    <message>
      <source>plane between longissimus and iliocostalis</source>
      <translation>Spalt zwischen Mm. longissimus und iliocostalis</translation>
    </message>
    <message>
      <source>trapezius</source>
      <translation>M. trapezius</translation>
    </message>
    <message>
      <source>rhomboids</source>
      <translation>Mm. rhomboidei</translation>
    </message>
    <message>
      <source>serratus posterior muscles</source>
      <translation>Mm. serrati posteriores</translation>
    </message>
    <message>
      <source>splenius muscles</source>
      <translation>Mm. splenii</translation>
    </message>
    <message>
      <source>iliocostalis</source>
      <translation>M. iliocostalis</translation>
    </message>
    <message>
      <source>longissimus</source>
      <translation>M. longissimus</translation>
    </message>
    <message>
      <source>spinalis</source>
      <translation>M. spinalis</translation>
    </message>
    <message>
      <source>semispinalis</source>
      <translation>M. semispinalis</translation>
    </message>
    <message>
      <source>multifidus</source>
      <translation>Mm. multifidi</translation>
    </message>
    <message>
      <source>rotatores</source>
      <translation>Mm. rotatores</translation>
    </message>
    <message>
      <source>interspinales</source>
      <translation>Mm. interspinales</translation>
    </message>
    <message>
      <source>intertransversarii</source>
      <translation>Mm. intertransversarii</translation>
    </message>
    <message>
      <source>levatores costarum</source>
      <translation>Mm. levatores costarum</translation>
    </message>
    <message>
      <source>suboccipital muscles</source>
      <translation>Kurze Nackenmuskeln</translation>
    </message>
    <message>
      <source>scapular muscles</source>
      <translation>Muskeln der Scapula</translation>
    </message>
    <message>
      <source>scalenes</source>
      <translation>Mm. scaleni</translation>
    </message>
    <message>
      <source>thoracolumbar fascia</source>
      <translation>Fascia thoracolumbalis</translation>
    </message>
    <message>
      <source>vertebral column</source>
      <translation>Wirbelsäule</translation>
    </message>
    <message>
      <source>ribs</source>
      <translation>Rippen</translation>
    </message>
    <message>
      <source>superficial muscles of the back</source>
      <translation>Oberflächliche Rückenmuskeln</translation>
    </message>
    <message>
      <source>It has no spinous process: the first spine felt below the skull is that of C2.</source>
      <translation>Er hat keinen Dornfortsatz: Der erste Dorn, den man unter dem Schädel tastet, ist der von C2.</translation>
    </message>
    <message>
      <source>Its spine is the hub from which rectus capitis posterior major and obliquus capitis inferior diverge.</source>
      <translation>Von seinem Dornfortsatz gehen M. rectus capitis posterior major und M. obliquus capitis inferior auseinander.</translation>
    </message>
    <message>
      <source>Short forked spine, a foramen in each transverse process, its articular processes stacked into a pillar; the spine lies deep under the nuchal ligament, so levels are not counted here.</source>
      <translation>Kurzer, gegabelter Dornfortsatz, ein Loch in jedem Querfortsatz, die Gelenkfortsätze zu einem Pfeiler gestapelt; der Dornfortsatz liegt tief unter dem Lig. nuchae, deshalb zählt man hier keine Höhen.</translation>
    </message>
    <message>
      <source>Usually, not always, the most prominent spine: T1 may win. Stretching the neck helps to tell them apart.</source>
      <translation>Meist, aber nicht immer, der am stärksten vorspringende Dornfortsatz: T1 kann ihn übertreffen. Den Hals zu strecken hilft, beide zu unterscheiden.</translation>
    </message>
    <message>
      <source>Facets for ribs on body and transverse process; the spine slopes a little, and its tip lies near the disc below.</source>
      <translation>Rippengelenkflächen an Körper und Querfortsatz; der Dornfortsatz neigt sich ein wenig, seine Spitze liegt etwa in Höhe der Bandscheibe darunter.</translation>
    </message>
    <message>
      <source>The spine slopes steeply: its tip lies about one level below its own body, which is why a spine and its rib do not share a height.</source>
      <translation>Der Dornfortsatz fällt steil ab: Seine Spitze liegt etwa einen Wirbel tiefer als der eigene Wirbelkörper; deshalb stehen Dorn und zugehörige Rippe nicht auf gleicher Höhe.</translation>
    </message>
    <message>
      <source>The slope of the spine eases again; from here down the tip returns towards its own level.</source>
      <translation>Der Dornfortsatz steht wieder flacher; von hier abwärts kehrt die Spitze auf ihre eigene Höhe zurück.</translation>
    </message>
    <message>
      <source>One whole facet for its rib on each side of the body and none on the short transverse process.</source>
      <translation>Je eine ganze Rippengelenkfläche seitlich am Körper, keine am kurzen Querfortsatz.</translation>
    </message>
    <message>
      <source>Its lower articular processes face outward like those of the loin: the place where turning gives way to bending.</source>
      <translation>Seine unteren Gelenkfortsätze sehen nach außen wie die der Lende: Hier geht das Drehen in das Beugen über.</translation>
    </message>
    <message>
      <source>Hatchet spine; mamillary process on the upper articular process, accessory process at the root of the transverse one. Laminae leave gaps between them, unlike those of the chest.</source>
      <translation>Beilförmiger Dornfortsatz; Proc. mamillaris am oberen Gelenkfortsatz, Proc. accessorius an der Wurzel des Querfortsatzes. Die Laminae lassen Lücken zwischen sich, anders als an der Brust.</translation>
    </message>
    <message>
      <source>Wedge-shaped body and stout transverse processes tied to the hip bone; its spine is the smallest of the loin.</source>
      <translation>Keilförmiger Körper und kräftige Querfortsätze, die an das Hüftbein gebunden sind; sein Dornfortsatz ist der kleinste der Lende.</translation>
    </message>
    <message>
      <source>Not reached from behind: seen in section only. It is named by the two vertebrae that it joins.</source>
      <translation>Von hinten nicht zu erreichen: nur im Schnitt zu sehen. Benannt nach den beiden Wirbeln, die sie verbindet.</translation>
    </message>
    <message>
      <source>lower endplate of the vertebra above</source>
      <translation>untere Endplatte des Wirbels darüber</translation>
    </message>
    <message>
      <source>Multifidus fills the hollow between median crest and posterior superior iliac spine, under the shared tendon.</source>
      <translation>Der M. multifidus füllt unter der gemeinsamen Sehne die Mulde zwischen Crista sacralis mediana und Spina iliaca posterior superior.</translation>
    </message>
    <message>
      <source>Courses differ in how far down the midline cut goes: agree before the knife moves.</source>
      <translation>Wie weit der mediane Schnitt nach unten reicht, ist von Kurs zu Kurs verschieden: Einigen Sie sich, bevor Sie schneiden.</translation>
    </message>
    <message>
      <source>Short, flat and sharply bent; it hides behind the clavicle and is not counted from behind.</source>
      <translation>Kurz, flach und scharf gebogen; sie verbirgt sich hinter der Clavicula und wird von hinten nicht gezählt.</translation>
    </message>
    <message>
      <source>Takes the first slip of serratus posterior superior; the superior angle of the scapula lies on it.</source>
      <translation>Nimmt die erste Zacke des M. serratus posterior superior auf; der Angulus superior der Scapula liegt auf ihr.</translation>
    </message>
    <message>
      <source>The angle marks the outer edge of iliocostalis; the tubercle meets the transverse process of the same number.</source>
      <translation>Der Angulus costae bezeichnet den Außenrand des M. iliocostalis; das Tuberculum liegt am Querfortsatz mit derselben Nummer.</translation>
    </message>
    <message>
      <source>The last rib whose cartilage reaches the sternum directly; the inferior angle of the scapula lies near it.</source>
      <translation>Die letzte Rippe, deren Knorpel das Sternum unmittelbar erreicht; der Angulus inferior der Scapula liegt in ihrer Nähe.</translation>
    </message>
    <message>
      <source>Floating: its short cartilage ends in the wall. One facet, no neck to speak of.</source>
      <translation>Freie Rippe: Ihr kurzer Knorpel endet in der Wand. Eine einzige Gelenkfläche, kaum ein Hals.</translation>
    </message>
    <message>
      <source>Its length varies and it may be too short to feel: if the lowest rib felt reaches the side, it may be the eleventh.</source>
      <translation>Ihre Länge schwankt, sie kann zu kurz zum Tasten sein: Reicht die unterste tastbare Rippe bis zur Flanke, so kann es die elfte sein.</translation>
    </message>
    <message>
      <source>Seven reach the sternum, the next three the cartilage above; the last two ribs end free in the wall.</source>
      <translation>Sieben reichen an das Sternum, die nächsten drei an den Knorpel darüber; die letzten beiden Rippen enden frei in der Wand.</translation>
    </message>
    <message>
      <source>front end of its rib</source>
      <translation>vorderes Ende der zugehörigen Rippe</translation>
    </message>
    <message>
      <source>Not part of the back: it closes the chest wall and tells the reader of a section which way is front.</source>
      <translation>Kein Teil des Rückens: Es schließt die Brustwand und zeigt im Schnitt, wo vorn ist.</translation>
    </message>
    <message>
      <source>Never bolted to the chest: everything that is folded in this lab moves it.</source>
      <translation>Nirgends fest am Brustkorb: Alles, was in diesem Kurs umgeklappt wird, bewegt sie.</translation>
    </message>
    <message>
      <source>Trapezius goes round the neck to reach its lateral third: the insertion cannot be seen from straight behind.</source>
      <translation>Der M. trapezius zieht um den Hals herum an ihr laterales Drittel: Von genau hinten ist der Ansatz nicht zu sehen.</translation>
    </message>
    <message>
      <source>Latissimus starts on the back and ends on the front of this bone: hence its turn inward of the arm. Only the upper part is modelled.</source>
      <translation>Der M. latissimus dorsi entspringt am Rücken und endet an der Vorderseite dieses Knochens: daher die Innenrotation des Arms. Nur der obere Teil ist modelliert.</translation>
    </message>
    <message>
      <source>The iliac crest is the lower fence of the whole dissection; by touch it is usually judged one level too high.</source>
      <translation>Die Crista iliaca ist die untere Grenze der ganzen Präparation; beim Tasten wird sie meist einen Wirbel zu hoch eingeschätzt.</translation>
    </message>
    <message>
      <source>Three stretches tell the layer: above the superior nuchal line the outer sheet, between the lines semispinalis, below the inferior line the suboccipital muscles.</source>
      <translation>Drei Streifen verraten die Schicht: oberhalb der Linea nuchalis superior die äußere Platte, zwischen den Linien der M. semispinalis, unterhalb der Linea nuchalis inferior die kurzen Nackenmuskeln.</translation>
    </message>
    <message>
      <source>Not part of the back: drawn in a simple form so that the head reads as a head. Below and in front of the mastoid process its angle bounds the retromandibular hollow.</source>
      <translation>Kein Teil des Rückens: vereinfacht gezeichnet, damit der Kopf als Kopf erkennbar ist. Unterhalb und vor dem Proc. mastoideus begrenzt ihr Winkel die Fossa retromandibularis.</translation>
    </message>
    <message>
      <source>Not part of the back: it is where gluteus maximus, gluteus medius and psoas major end. Only the upper part is modelled.</source>
      <translation>Kein Teil des Rückens: Hier enden M. gluteus maximus, M. gluteus medius und M. psoas major. Nur der obere Teil ist modelliert.</translation>
    </message>
    <message>
      <source>In people more a raphe of crossing tendons than a strong band; trapezius, rhomboid minor, splenius and serratus posterior superior all begin on it.</source>
      <translation>Beim Menschen eher eine Raphe aus gekreuzten Sehnen als ein starkes Band; M. trapezius, M. rhomboideus minor, Mm. splenii und M. serratus posterior superior entspringen alle an ihm.</translation>
    </message>
    <message>
      <source>external occipital protuberance</source>
      <translation>Protuberantia occipitalis externa</translation>
    </message>
    <message>
      <source>external occipital crest</source>
      <translation>Crista occipitalis externa</translation>
    </message>
    <message>
      <source>posterior tubercle of the atlas</source>
      <translation>Tuberculum posterius des Atlas</translation>
    </message>
    <message>
      <source>spinous processes of C2 to C7</source>
      <translation>Dornfortsätze C2 bis C7</translation>
    </message>
    <message>
      <source>Cut a finger-width off the midline: that keeps it whole and leaves a cuff to sew back to.</source>
      <translation>Einen Fingerbreit neben der Mittellinie schneiden: So bleibt es ganz, und es bleibt ein Saum zum Annähen.</translation>
    </message>
    <message>
      <source>tips of the spinous processes of C7 to L4</source>
      <translation>Spitzen der Dornfortsätze C7 bis L4</translation>
    </message>
    <message>
      <source>sometimes L5</source>
      <translation>manchmal L5</translation>
    </message>
    <message>
      <source>Older books carry it to the sacrum; measured, it mostly ends at L4.</source>
      <translation>Ältere Bücher führen es bis zum Sacrum; nach Messungen endet es meist bei L4.</translation>
    </message>
    <message>
      <source>Thin in the chest, broad in the loin.</source>
      <translation>An der Brust dünn, an der Lende breit.</translation>
    </message>
    <message>
      <source>lower edge of the upper spinous process</source>
      <translation>Unterrand des oberen Dornfortsatzes</translation>
    </message>
    <message>
      <source>upper edge of the lower spinous process</source>
      <translation>Oberrand des unteren Dornfortsatzes</translation>
    </message>
    <message>
      <source>Truly yellow even after fixing: the sign that the next layer is fat round the dura.</source>
      <translation>Auch nach der Fixierung wirklich gelb: das Zeichen, dass als Nächstes Fett um die Dura kommt.</translation>
    </message>
    <message>
      <source>front of the upper lamina</source>
      <translation>Vorderfläche der oberen Lamina</translation>
    </message>
    <message>
      <source>Guides to the space where the posterior ramus comes through.</source>
      <translation>Wegweiser zu der Lücke, durch die der Ramus posterior austritt.</translation>
    </message>
    <message>
      <source>upper transverse process</source>
      <translation>oberer Querfortsatz</translation>
    </message>
    <message>
      <source>lower transverse process</source>
      <translation>unterer Querfortsatz</translation>
    </message>
    <message>
      <source>The posterior ramus passes on its medial side.</source>
      <translation>Der Ramus posterior zieht medial an ihm vorbei.</translation>
    </message>
    <message>
      <source>neck of the rib</source>
      <translation>Collum der Rippe</translation>
    </message>
    <message>
      <source>transverse process of the vertebra above</source>
      <translation>Querfortsatz des Wirbels darüber</translation>
    </message>
    <message>
      <source>The way a facet looks decides what its region can do: the neck tilts, the chest turns, the loin bends.</source>
      <translation>Wohin eine Gelenkfläche sieht, bestimmt, was ihr Abschnitt kann: Der Hals neigt sich, die Brust dreht sich, die Lende beugt sich.</translation>
    </message>
    <message>
      <source>inferior articular process above</source>
      <translation>unterer Gelenkfortsatz des oberen Wirbels</translation>
    </message>
    <message>
      <source>superior articular process below</source>
      <translation>oberer Gelenkfortsatz des unteren Wirbels</translation>
    </message>
    <message>
      <source>In front of the bodies: a section shows it when the peel does not.</source>
      <translation>Vor den Wirbelkörpern: Der Schnitt zeigt es, das Abtragen nicht.</translation>
    </message>
    <message>
      <source>fronts of the bodies and discs from the axis down</source>
      <translation>Vorderflächen der Wirbelkörper und Bandscheiben vom Axis abwärts</translation>
    </message>
    <message>
      <source>front of the sacrum</source>
      <translation>Vorderfläche des Sacrums</translation>
    </message>
    <message>
      <source>In front of the dura, waisted over the bodies: seen in section or after the dura is opened.</source>
      <translation>Vor der Dura, über den Wirbelkörpern tailliert: im Schnitt oder nach Eröffnung der Dura zu sehen.</translation>
    </message>
    <message>
      <source>backs of the bodies and discs inside the canal</source>
      <translation>Rückflächen der Wirbelkörper und Bandscheiben im Wirbelkanal</translation>
    </message>
    <message>
      <source>sacrum, inside the canal</source>
      <translation>Sacrum, im Kanal</translation>
    </message>
    <message>
      <source>Seen only in a deep loin window; useful to know which transverse process is that of L5.</source>
      <translation>Nur in einem tiefen Lendenfenster zu sehen; nützlich, um den Querfortsatz von L5 zu erkennen.</translation>
    </message>
    <message>
      <source>transverse process of L5</source>
      <translation>Querfortsatz von L5</translation>
    </message>
    <message>
      <source>inner lip of the iliac crest near its back end</source>
      <translation>Labium internum der Crista iliaca nahe ihrem hinteren Ende</translation>
    </message>
    <message>
      <source>A strong upper edge of the middle layer of the thoracolumbar fascia; it ties rib 12 down.</source>
      <translation>Der kräftige Oberrand der Lamina media der Fascia thoracolumbalis; er hält die 12. Rippe unten.</translation>
    </message>
    <message>
      <source>tips of the transverse processes of L1 and L2</source>
      <translation>Spitzen der Querfortsätze von L1 und L2</translation>
    </message>
    <message>
      <source>lower border of rib 12</source>
      <translation>Unterrand der 12. Rippe</translation>
    </message>
    <message>
      <source>Multifidus takes fibres from it; the middle cluneal nerves pass at its lower edge.</source>
      <translation>Der M. multifidus bezieht Fasern von ihm; die Nn. clunium medii treten an seinem Unterrand vorbei.</translation>
    </message>
    <message>
      <source>posterior superior iliac spine and the bone round it</source>
      <translation>Spina iliaca posterior superior und der Knochen ringsum</translation>
    </message>
    <message>
      <source>lateral sacral crest</source>
      <translation>Crista sacralis lateralis</translation>
    </message>
    <message>
      <source>Covered by gluteus maximus, which takes fibres from it.</source>
      <translation>Bedeckt vom M. gluteus maximus, der Fasern von ihm bezieht.</translation>
    </message>
    <message>
      <source>posterior iliac spines</source>
      <translation>Spinae iliacae posteriores</translation>
    </message>
    <message>
      <source>side of the sacrum and coccyx</source>
      <translation>Seitenrand von Sacrum und Os coccygis</translation>
    </message>
    <message>
      <source>ischial tuberosity</source>
      <translation>Tuber ischiadicum</translation>
    </message>
    <message>
      <source>With the arch of the atlas the floor of the suboccipital triangle; the vertebral artery goes through it, so nothing is probed blindly here.</source>
      <translation>Mit dem Atlasbogen der Boden des Trigonum suboccipitale; die A. vertebralis tritt hindurch, deshalb wird hier nichts blind sondiert.</translation>
    </message>
    <message>
      <source>back rim of the foramen magnum</source>
      <translation>Hinterrand des Foramen magnum</translation>
    </message>
    <message>
      <source>posterior arch of the atlas</source>
      <translation>Arcus posterior des Atlas</translation>
    </message>
    <message>
      <source>carries the cutaneous nerves</source>
      <translation>führt die Hautnerven</translation>
    </message>
    <message>
      <source>carries the cutaneous vessels</source>
      <translation>führt die Hautgefäße</translation>
    </message>
    <message>
      <source>Nerves here run in the fat, not on the muscle: look before the fat is stripped. Thin over spines and scapular spine, thick over loin and nape.</source>
      <translation>Die Nerven verlaufen hier im Fett, nicht auf dem Muskel: Suchen Sie sie, bevor das Fett abgetragen wird. Dünn über Dornfortsätzen und Spina scapulae, dick an Lende und Nacken.</translation>
    </message>
    <message>
      <source>A film stuck to muscle: scrape along the fibres, never across them.</source>
      <translation>Ein Häutchen, das am Muskel klebt: mit den Fasern abschaben, nie quer dazu.</translation>
    </message>
    <message>
      <source>superior nuchal line</source>
      <translation>Linea nuchalis superior</translation>
    </message>
    <message>
      <source>supraspinous ligament and spinous processes from C7 down</source>
      <translation>Lig. supraspinale und Dornfortsätze ab C7 abwärts</translation>
    </message>
    <message>
      <source>spine of the scapula and acromion</source>
      <translation>Spina scapulae und Acromion</translation>
    </message>
    <message>
      <source>iliac crest</source>
      <translation>Crista iliaca</translation>
    </message>
    <message>
      <source>The second fascia of the neck: one lies over trapezius, this one under it, on splenius. Below it goes on as the deep lamina of the thoracolumbar fascia under serratus posterior superior.</source>
      <translation>Die zweite Faszie des Nackens: Eine liegt über dem M. trapezius, diese unter ihm auf den Mm. splenii. Nach unten setzt sie sich unter dem M. serratus posterior superior als tiefes Blatt der Fascia thoracolumbalis fort.</translation>
    </message>
    <message>
      <source>Two crossing laminae: the outer is the aponeurosis of latissimus and comes away with it, the deep one stays as the cover of erector spinae. Opening it is what first shows erector spinae in the loin.</source>
      <translation>Zwei sich kreuzende Blätter: Das äußere ist die Aponeurose des M. latissimus dorsi und geht mit ihr ab, das tiefe bleibt als Decke des M. erector spinae. Erst wenn sie eröffnet ist, sieht man in der Lende den M. erector spinae.</translation>
    </message>
    <message>
      <source>spinous processes and supraspinous ligament</source>
      <translation>Dornfortsätze und Lig. supraspinale</translation>
    </message>
    <message>
      <source>median sacral crest</source>
      <translation>Crista sacralis mediana</translation>
    </message>
    <message>
      <source>iliac crest, back part</source>
      <translation>Crista iliaca, hinterer Teil</translation>
    </message>
    <message>
      <source>angles of the ribs, lateral to iliocostalis</source>
      <translation>Anguli costarum, lateral vom M. iliocostalis</translation>
    </message>
    <message>
      <source>A firm floor in front of erector spinae; quadratus lumborum lies on its far side.</source>
      <translation>Ein fester Boden vor dem M. erector spinae; der M. quadratus lumborum liegt auf seiner anderen Seite.</translation>
    </message>
    <message>
      <source>tips of the transverse processes of L1 to L4</source>
      <translation>Spitzen der Querfortsätze L1 bis L4</translation>
    </message>
    <message>
      <source>Two-layer and three-layer accounts name the layers differently.</source>
      <translation>Zwei- und Dreiblattbeschreibungen benennen die Blätter verschieden.</translation>
    </message>
    <message>
      <source>Where the posterior and middle layers meet the abdominal aponeuroses: it marks the lateral edge of the erector column before anything is opened.</source>
      <translation>Hier treffen hinteres und mittleres Blatt auf die Aponeurosen der Bauchmuskeln: Sie zeigt den Seitenrand des M. erector spinae, bevor etwas eröffnet ist.</translation>
    </message>
    <message>
      <source>rib 12</source>
      <translation>12. Rippe</translation>
    </message>
    <message>
      <source>lumbar and lateral sacral arteries</source>
      <translation>Aa. lumbales und Aa. sacrales laterales</translation>
    </message>
    <message>
      <source>Not the fascia: it is thick, shiny and vertical, the long tail tendon of the thoracic bundles, and covers lumbar longissimus and multifidus. Below L5 fascia and aponeurosis cannot be parted cleanly.</source>
      <translation>Nicht die Faszie: Sie ist dick, glänzend und längs gefasert, die lange untere Sehne der thorakalen Faszikel, und bedeckt die lumbalen Anteile von M. longissimus und M. multifidus. Unterhalb von L5 lassen sich Faszie und Aponeurose nicht sauber trennen.</translation>
    </message>
    <message>
      <source>spinous processes of T11 to L5 and the supraspinous ligament</source>
      <translation>Dornfortsätze T11 bis L5 und Lig. supraspinale</translation>
    </message>
    <message>
      <source>posterior superior iliac spine</source>
      <translation>Spina iliaca posterior superior</translation>
    </message>
    <message>
      <source>back of the inner lip of the iliac crest</source>
      <translation>hinterer Teil des Labium internum der Crista iliaca</translation>
    </message>
    <message>
      <source>Floor of the superior lumbar triangle.</source>
      <translation>Boden des Trigonum lumbale superius.</translation>
    </message>
    <message>
      <source>middle layer of the thoracolumbar fascia, at the lateral raphe</source>
      <translation>Lamina media der Fascia thoracolumbalis, an der lateralen Raphe</translation>
    </message>
    <message>
      <source>inner faces of the lowest ribs</source>
      <translation>Innenflächen der untersten Rippen</translation>
    </message>
    <message>
      <source>accessory nerve (motor); branches of C3 and C4, mostly for feeling</source>
      <translation>N. accessorius (motorisch); Äste von C3 und C4, überwiegend sensibel</translation>
    </message>
    <message>
      <source>Thin at the skull and thick at the root of the neck: most of its bulk starts from the lower nuchal ligament and runs nearly crosswise.</source>
      <translation>Am Schädel dünn, an der Halswurzel dick: Der größte Teil seiner Masse entspringt am unteren Lig. nuchae und verläuft fast quer.</translation>
    </message>
    <message>
      <source>medial third of the superior nuchal line</source>
      <translation>mediales Drittel der Linea nuchalis superior</translation>
    </message>
    <message>
      <source>posterior border of the lateral third of the clavicle</source>
      <translation>Hinterrand des lateralen Drittels der Clavicula</translation>
    </message>
    <message>
      <source>raises the point of the shoulder</source>
      <translation>hebt die Schulter</translation>
    </message>
    <message>
      <source>turns the glenoid cavity up</source>
      <translation>dreht die Cavitas glenoidalis nach oben</translation>
    </message>
    <message>
      <source>both sides extend the head</source>
      <translation>beidseitig: streckt den Kopf</translation>
    </message>
    <message>
      <source>Whether C3 and C4 also move the muscle is not settled: 'mostly feeling' is the usual wording.</source>
      <translation>Ob C3 und C4 den Muskel auch bewegen, ist offen: „überwiegend sensibel“ ist die übliche Formulierung.</translation>
    </message>
    <message>
      <source>The slip to the skull may be separate or missing (Cunningham).</source>
      <translation>Die Zacke zum Schädel kann getrennt sein oder fehlen (Cunningham).</translation>
    </message>
    <message>
      <source>transverse cervical artery, superficial branch; dorsal scapular artery</source>
      <translation>A. transversa cervicis, Ramus superficialis; A. dorsalis scapulae</translation>
    </message>
    <message>
      <source>Both sides together carry a diamond of tendon about C7: pale here is normal, not over-cleaned.</source>
      <translation>Beide Seiten bilden zusammen einen Sehnenspiegel um C7: Blasses ist hier normal und nicht zu weit präpariert.</translation>
    </message>
    <message>
      <source>spinous processes of C7 to T3 and the supraspinous ligament</source>
      <translation>Dornfortsätze C7 bis T3 und Lig. supraspinale</translation>
    </message>
    <message>
      <source>medial margin of the acromion</source>
      <translation>medialer Rand des Acromions</translation>
    </message>
    <message>
      <source>upper lip of the scapular spine</source>
      <translation>Oberlippe der Spina scapulae</translation>
    </message>
    <message>
      <source>draws the scapula back towards the midline</source>
      <translation>zieht die Scapula zur Mittellinie zurück</translation>
    </message>
    <message>
      <source>dorsal scapular artery; posterior intercostal arteries</source>
      <translation>A. dorsalis scapulae; Aa. intercostales posteriores</translation>
    </message>
    <message>
      <source>It gathers into a small flat tendon on the smooth triangle of the scapula, with a bursa beneath; its lowest tip is the lowest thing cut from the spine in the first fold.</source>
      <translation>Er sammelt sich in einer kleinen flachen Sehne auf dem glatten Dreieck der Scapula, darunter eine Bursa; seine untere Spitze ist das Unterste, was beim ersten Umklappen von den Dornfortsätzen gelöst wird.</translation>
    </message>
    <message>
      <source>spinous processes of T4 to T12 and the supraspinous ligament</source>
      <translation>Dornfortsätze T4 bis T12 und Lig. supraspinale</translation>
    </message>
    <message>
      <source>tubercle at the medial end of the scapular spine, by a small aponeurosis that glides on the smooth triangle</source>
      <translation>Höcker am medialen Ende der Spina scapulae, mit einer kleinen Aponeurose, die auf dem glatten Dreieck gleitet</translation>
    </message>
    <message>
      <source>draws the medial end of the scapular spine down</source>
      <translation>zieht das mediale Ende der Spina scapulae abwärts</translation>
    </message>
    <message>
      <source>turns the glenoid cavity up, with the descending part</source>
      <translation>dreht mit der Pars descendens die Cavitas glenoidalis nach oben</translation>
    </message>
    <message>
      <source>Its lower limit often lies above T12.</source>
      <translation>Seine untere Grenze liegt oft oberhalb von T12.</translation>
    </message>
    <message>
      <source>thoracodorsal nerve (C6 to C8)</source>
      <translation>N. thoracodorsalis (C6 bis C8)</translation>
    </message>
    <message>
      <source>thoracodorsal artery; perforators of posterior intercostal and lumbar arteries</source>
      <translation>A. thoracodorsalis; perforierende Äste der Aa. intercostales posteriores und Aa. lumbales</translation>
    </message>
    <message>
      <source>Its top corner tucks under trapezius: the one place where the outer sheet is two deep. It starts on the back and ends on the front of the humerus.</source>
      <translation>Seine obere Ecke schiebt sich unter den M. trapezius: die einzige Stelle, an der die äußere Platte doppelt liegt. Er entspringt am Rücken und endet an der Vorderseite des Humerus.</translation>
    </message>
    <message>
      <source>spinous processes of T7 to T12, under trapezius</source>
      <translation>Dornfortsätze T7 bis T12, unter dem M. trapezius</translation>
    </message>
    <message>
      <source>posterior layer of the thoracolumbar fascia, and through it the lumbar and sacral spines</source>
      <translation>Lamina posterior der Fascia thoracolumbalis und über sie die Dornfortsätze von Lende und Sacrum</translation>
    </message>
    <message>
      <source>outer lip of the iliac crest, posterior third, lateral to erector spinae</source>
      <translation>Labium externum der Crista iliaca, hinteres Drittel, lateral vom M. erector spinae</translation>
    </message>
    <message>
      <source>lowest three ribs, by slips between those of external oblique</source>
      <translation>unterste drei Rippen, mit Zacken zwischen denen des M. obliquus externus abdominis</translation>
    </message>
    <message>
      <source>often the ninth rib</source>
      <translation>oft 9. Rippe</translation>
    </message>
    <message>
      <source>often the inferior angle of the scapula</source>
      <translation>oft Angulus inferior der Scapula</translation>
    </message>
    <message>
      <source>floor of the intertubercular sulcus, twisting round the lower border of teres major to its front</source>
      <translation>Boden des Sulcus intertubercularis; windet sich um den Unterrand des M. teres major auf dessen Vorderseite</translation>
    </message>
    <message>
      <source>extends the arm</source>
      <translation>streckt den Arm (Retroversion)</translation>
    </message>
    <message>
      <source>draws the arm to the side</source>
      <translation>adduziert den Arm</translation>
    </message>
    <message>
      <source>turns the arm inward</source>
      <translation>dreht den Arm nach innen</translation>
    </message>
    <message>
      <source>The slip from the inferior angle is muscle in about 43 % of bodies, otherwise strands or a bursa.</source>
      <translation>Die Zacke vom Angulus inferior ist bei etwa 43 % der Körper muskulär, sonst finden sich Stränge oder eine Bursa.</translation>
    </message>
    <message>
      <source>Thoracic spines of origin vary from four to seven or eight (Gray).</source>
      <translation>Vier bis sieben oder acht Brustdornfortsätze als Ursprung (Gray).</translation>
    </message>
    <message>
      <source>axillary nerve (C5, C6)</source>
      <translation>N. axillaris (C5, C6)</translation>
    </message>
    <message>
      <source>posterior circumflex humeral artery; deltoid branch of the thoraco-acromial artery</source>
      <translation>A. circumflexa humeri posterior; Ramus deltoideus der A. thoracoacromialis</translation>
    </message>
    <message>
      <source>It starts where trapezius ends, on the other lip of the same crest.</source>
      <translation>Er entspringt, wo der M. trapezius endet, an der anderen Lippe derselben Leiste.</translation>
    </message>
    <message>
      <source>anterior border of the lateral third of the clavicle</source>
      <translation>Vorderrand des lateralen Drittels der Clavicula</translation>
    </message>
    <message>
      <source>lateral margin of the acromion</source>
      <translation>lateraler Rand des Acromions</translation>
    </message>
    <message>
      <source>lower lip of the scapular spine</source>
      <translation>Unterlippe der Spina scapulae</translation>
    </message>
    <message>
      <source>deltoid tuberosity of the humerus</source>
      <translation>Tuberositas deltoidea des Humerus</translation>
    </message>
    <message>
      <source>abducts the arm</source>
      <translation>abduziert den Arm</translation>
    </message>
    <message>
      <source>its spinal part extends the arm and turns it outward</source>
      <translation>Pars spinalis: streckt den Arm und dreht ihn nach außen</translation>
    </message>
    <message>
      <source>its clavicular part flexes the arm and turns it inward</source>
      <translation>Pars clavicularis: beugt den Arm und dreht ihn nach innen</translation>
    </message>
    <message>
      <source>accessory nerve; C2 and C3, mostly for feeling</source>
      <translation>N. accessorius; C2 und C3, überwiegend sensibel</translation>
    </message>
    <message>
      <source>occipital and superior thyroid arteries</source>
      <translation>A. occipitalis und A. thyroidea superior</translation>
    </message>
    <message>
      <source>It shares its nerve with trapezius; its back edge is the front of the posterior triangle.</source>
      <translation>Er teilt seinen Nerv mit dem M. trapezius; sein Hinterrand ist die Vordergrenze des seitlichen Halsdreiecks.</translation>
    </message>
    <message>
      <source>front of the manubrium</source>
      <translation>Vorderfläche des Manubriums</translation>
    </message>
    <message>
      <source>medial third of the clavicle</source>
      <translation>mediales Drittel der Clavicula</translation>
    </message>
    <message>
      <source>outer face of the mastoid process</source>
      <translation>Außenfläche des Proc. mastoideus</translation>
    </message>
    <message>
      <source>lateral half of the superior nuchal line</source>
      <translation>laterale Hälfte der Linea nuchalis superior</translation>
    </message>
    <message>
      <source>turns the face to the opposite side</source>
      <translation>dreht das Gesicht zur Gegenseite</translation>
    </message>
    <message>
      <source>bends the neck to its own side</source>
      <translation>neigt den Hals zur eigenen Seite</translation>
    </message>
    <message>
      <source>both sides flex the neck</source>
      <translation>beidseitig: beugt den Hals</translation>
    </message>
    <message>
      <source>anterior rami T7 to T12</source>
      <translation>Rami anteriores T7 bis T12</translation>
    </message>
    <message>
      <source>lower posterior intercostal, subcostal and lumbar arteries</source>
      <translation>untere Aa. intercostales posteriores, A. subcostalis und Aa. lumbales</translation>
    </message>
    <message>
      <source>Its back edge hangs free from rib 12 to the crest: hence the inferior lumbar triangle.</source>
      <translation>Sein Hinterrand hängt zwischen 12. Rippe und Crista iliaca frei: daher das Trigonum lumbale inferius.</translation>
    </message>
    <message>
      <source>outer faces of ribs 5 to 12, between slips of serratus anterior and latissimus</source>
      <translation>Außenflächen der 5. bis 12. Rippe, zwischen den Zacken von M. serratus anterior und M. latissimus dorsi</translation>
    </message>
    <message>
      <source>outer lip of the front half of the iliac crest</source>
      <translation>Labium externum der vorderen Hälfte der Crista iliaca</translation>
    </message>
    <message>
      <source>linea alba and inguinal ligament (not modelled)</source>
      <translation>Linea alba und Lig. inguinale (nicht modelliert)</translation>
    </message>
    <message>
      <source>bends the trunk to its side</source>
      <translation>neigt den Rumpf zur eigenen Seite</translation>
    </message>
    <message>
      <source>turns the trunk to the opposite side</source>
      <translation>dreht den Rumpf zur Gegenseite</translation>
    </message>
    <message>
      <source>inferior gluteal nerve (L5 to S2)</source>
      <translation>N. gluteus inferior (L5 bis S2)</translation>
    </message>
    <message>
      <source>superior and inferior gluteal arteries</source>
      <translation>A. glutea superior und A. glutea inferior</translation>
    </message>
    <message>
      <source>It pulls on the same fascia as the latissimus of the opposite side. Only its upper part is modelled.</source>
      <translation>Er zieht an derselben Faszie wie der M. latissimus dorsi der Gegenseite. Nur der obere Teil ist modelliert.</translation>
    </message>
    <message>
      <source>ilium behind the posterior gluteal line</source>
      <translation>Ala ossis ilii hinter der Linea glutea posterior</translation>
    </message>
    <message>
      <source>back of the sacrum and coccyx</source>
      <translation>Rückfläche von Sacrum und Os coccygis</translation>
    </message>
    <message>
      <source>erector spinae aponeurosis and the fascia over it</source>
      <translation>Aponeurose des M. erector spinae und die Faszie darüber</translation>
    </message>
    <message>
      <source>gluteal tuberosity of the femur</source>
      <translation>Tuberositas glutea des Femurs</translation>
    </message>
    <message>
      <source>iliotibial tract (not modelled)</source>
      <translation>Tractus iliotibialis (nicht modelliert)</translation>
    </message>
    <message>
      <source>extends the hip and turns it outward</source>
      <translation>streckt die Hüfte und dreht sie nach außen</translation>
    </message>
    <message>
      <source>branches of C3 and C4; often the dorsal scapular nerve (C5)</source>
      <translation>Äste von C3 und C4; oft N. dorsalis scapulae (C5)</translation>
    </message>
    <message>
      <source>dorsal scapular artery (transverse cervical artery, deep branch)</source>
      <translation>A. dorsalis scapulae (A. transversa cervicis, Ramus profundus)</translation>
    </message>
    <message>
      <source>A strap that twists on its way down: the slips keep apart above and run together below. It ends above the root of the scapular spine, never on the spine.</source>
      <translation>Ein Riemen, der sich auf seinem Weg nach unten verdreht: Oben bleiben die Zacken getrennt, unten laufen sie zusammen. Er endet oberhalb der Wurzel der Spina scapulae, nie an der Spina selbst.</translation>
    </message>
    <message>
      <source>transverse processes of C1 and C2</source>
      <translation>Querfortsätze von C1 und C2</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C3 and C4</source>
      <translation>Tubercula posteriora der Querfortsätze von C3 und C4</translation>
    </message>
    <message>
      <source>medial border of the scapula from the superior angle to the root of the spine</source>
      <translation>Margo medialis der Scapula vom Angulus superior bis zur Wurzel der Spina</translation>
    </message>
    <message>
      <source>raises the scapula</source>
      <translation>hebt die Scapula</translation>
    </message>
    <message>
      <source>turns the glenoid cavity down</source>
      <translation>dreht die Cavitas glenoidalis nach unten</translation>
    </message>
    <message>
      <source>bends the neck to its side</source>
      <translation>neigt den Hals zu seiner Seite</translation>
    </message>
    <message>
      <source>Nerve: C3 and C4 always; the dorsal scapular nerve 'frequently' (Gray), in about half of one series of 23 nerves (Nguyen 2016).</source>
      <translation>Nerv: C3 und C4 immer; der N. dorsalis scapulae „häufig“ (Gray), in etwa der Hälfte einer Reihe von 23 Nerven (Nguyen 2016).</translation>
    </message>
    <message>
      <source>Two to six slips occur; four are most common.</source>
      <translation>Zwei bis sechs Zacken kommen vor; vier sind am häufigsten.</translation>
    </message>
    <message>
      <source>dorsal scapular nerve (C4, C5)</source>
      <translation>N. dorsalis scapulae (C4, C5)</translation>
    </message>
    <message>
      <source>Told from rhomboid major by its attachments, not by a gap: often there is none.</source>
      <translation>Vom M. rhomboideus major durch seine Ansätze zu unterscheiden, nicht durch eine Lücke: Oft gibt es keine.</translation>
    </message>
    <message>
      <source>lower part of the nuchal ligament</source>
      <translation>unterer Teil des Lig. nuchae</translation>
    </message>
    <message>
      <source>spinous processes of C7 and T1</source>
      <translation>Dornfortsätze von C7 und T1</translation>
    </message>
    <message>
      <source>medial border of the scapula at the root of the spine</source>
      <translation>Margo medialis der Scapula an der Wurzel der Spina</translation>
    </message>
    <message>
      <source>draws the scapula back and up</source>
      <translation>zieht die Scapula nach hinten oben</translation>
    </message>
    <message>
      <source>Root: Gray names C5 alone; C4 takes part in about a fifth (Nguyen 2016).</source>
      <translation>Wurzel: Gray nennt C5 allein; C4 ist bei etwa einem Fünftel beteiligt (Nguyen 2016).</translation>
    </message>
    <message>
      <source>Same slope as rhomboid minor, four times as broad; its lower corner shows in the triangle of auscultation before anything is folded.</source>
      <translation>Gleiche Neigung wie der M. rhomboideus minor, viermal so breit; seine untere Ecke ist im Trigonum auscultationis zu sehen, bevor etwas umgeklappt ist.</translation>
    </message>
    <message>
      <source>spinous processes of T2 to T5 and the supraspinous ligament</source>
      <translation>Dornfortsätze T2 bis T5 und Lig. supraspinale</translation>
    </message>
    <message>
      <source>medial border of the scapula from the root of the spine to the inferior angle</source>
      <translation>Margo medialis der Scapula von der Wurzel der Spina bis zum Angulus inferior</translation>
    </message>
    <message>
      <source>Most fibres reach the bone through a tendinous arch that may be short or missing (Gray).</source>
      <translation>Die meisten Fasern erreichen den Knochen über einen Sehnenbogen, der kurz sein oder fehlen kann (Gray).</translation>
    </message>
    <message>
      <source>suprascapular nerve (C5, C6)</source>
      <translation>N. suprascapularis (C5, C6)</translation>
    </message>
    <message>
      <source>The first new muscle seen at the shoulder when trapezius is folded: do not take it for levator.</source>
      <translation>Der erste neue Muskel an der Schulter, wenn der M. trapezius umgeklappt ist: nicht mit dem M. levator scapulae verwechseln.</translation>
    </message>
    <message>
      <source>supraspinous fossa</source>
      <translation>Fossa supraspinata</translation>
    </message>
    <message>
      <source>superior facet of the greater tubercle</source>
      <translation>obere Facette des Tuberculum majus</translation>
    </message>
    <message>
      <source>starts abduction of the arm</source>
      <translation>leitet die Abduktion des Arms ein</translation>
    </message>
    <message>
      <source>holds the head of the humerus to its socket</source>
      <translation>hält den Humeruskopf in der Pfanne</translation>
    </message>
    <message>
      <source>suprascapular and circumflex scapular arteries</source>
      <translation>A. suprascapularis und A. circumflexa scapulae</translation>
    </message>
    <message>
      <source>Under its own tough fascia: dull and white, often mistaken for bone.</source>
      <translation>Unter eigener derber Faszie: stumpf und weiß, oft für Knochen gehalten.</translation>
    </message>
    <message>
      <source>infraspinous fossa</source>
      <translation>Fossa infraspinata</translation>
    </message>
    <message>
      <source>middle facet of the greater tubercle</source>
      <translation>mittlere Facette des Tuberculum majus</translation>
    </message>
    <message>
      <source>turns the arm outward</source>
      <translation>dreht den Arm nach außen</translation>
    </message>
    <message>
      <source>circumflex scapular artery; posterior circumflex humeral artery</source>
      <translation>A. circumflexa scapulae; A. circumflexa humeri posterior</translation>
    </message>
    <message>
      <source>Upper border of the gap through which the axillary nerve comes to the back.</source>
      <translation>Oberrand der Lücke, durch die der N. axillaris nach hinten tritt.</translation>
    </message>
    <message>
      <source>upper two thirds of the lateral border of the scapula, on the back</source>
      <translation>obere zwei Drittel des Margo lateralis der Scapula, auf der Rückseite</translation>
    </message>
    <message>
      <source>inferior facet of the greater tubercle</source>
      <translation>untere Facette des Tuberculum majus</translation>
    </message>
    <message>
      <source>lower subscapular nerve (C5, C6)</source>
      <translation>N. subscapularis, unterer Ast (C5, C6)</translation>
    </message>
    <message>
      <source>circumflex scapular and thoracodorsal arteries</source>
      <translation>A. circumflexa scapulae und A. thoracodorsalis</translation>
    </message>
    <message>
      <source>Latissimus wraps round its lower border to lie in front of it: the two part only near the humerus.</source>
      <translation>Der M. latissimus dorsi schlingt sich um seinen Unterrand nach vorn: Die beiden trennen sich erst nahe am Humerus.</translation>
    </message>
    <message>
      <source>back of the inferior angle and lowest third of the lateral border of the scapula</source>
      <translation>Rückfläche des Angulus inferior und unteres Drittel des Margo lateralis der Scapula</translation>
    </message>
    <message>
      <source>crest of the lesser tubercle</source>
      <translation>Crista tuberculi minoris</translation>
    </message>
    <message>
      <source>radial nerve (C6 to C8)</source>
      <translation>N. radialis (C6 bis C8)</translation>
    </message>
    <message>
      <source>profunda brachii artery; posterior circumflex humeral artery</source>
      <translation>A. profunda brachii; A. circumflexa humeri posterior</translation>
    </message>
    <message>
      <source>It passes between the two teres muscles and so makes two gaps: quadrangular at its outer, triangular at its inner side. Only the upper part is modelled.</source>
      <translation>Er tritt zwischen den beiden Mm. teretes hindurch und bildet so zwei Lücken: außen die laterale, innen die mediale Achsellücke. Nur der obere Teil ist modelliert.</translation>
    </message>
    <message>
      <source>infraglenoid tubercle of the scapula</source>
      <translation>Tuberculum infraglenoidale der Scapula</translation>
    </message>
    <message>
      <source>olecranon of the ulna (not modelled)</source>
      <translation>Olecranon der Ulna (nicht modelliert)</translation>
    </message>
    <message>
      <source>extends the elbow</source>
      <translation>streckt den Ellenbogen</translation>
    </message>
    <message>
      <source>helps to extend the arm</source>
      <translation>hilft beim Strecken des Arms</translation>
    </message>
    <message>
      <source>anterior rami T7 to L1</source>
      <translation>Rami anteriores T7 bis L1</translation>
    </message>
    <message>
      <source>Floor of the inferior lumbar triangle: its fibres run up and forward, across those of external oblique.</source>
      <translation>Boden des Trigonum lumbale inferius: Seine Fasern steigen nach vorn oben, quer zu denen des M. obliquus externus abdominis.</translation>
    </message>
    <message>
      <source>thoracolumbar fascia along the lateral raphe</source>
      <translation>Fascia thoracolumbalis entlang der lateralen Raphe</translation>
    </message>
    <message>
      <source>middle of the iliac crest</source>
      <translation>Mitte der Crista iliaca</translation>
    </message>
    <message>
      <source>lower borders of the lowest three ribs</source>
      <translation>Unterränder der untersten drei Rippen</translation>
    </message>
    <message>
      <source>linea alba (not modelled)</source>
      <translation>Linea alba (nicht modelliert)</translation>
    </message>
    <message>
      <source>turns the trunk to its own side</source>
      <translation>dreht den Rumpf zur eigenen Seite</translation>
    </message>
    <message>
      <source>superior gluteal nerve (L4 to S1)</source>
      <translation>N. gluteus superior (L4 bis S1)</translation>
    </message>
    <message>
      <source>superior gluteal artery</source>
      <translation>A. glutea superior</translation>
    </message>
    <message>
      <source>Lower fence of the view, under its own thick fascia. Only its upper part is modelled.</source>
      <translation>Untere Grenze des Blickfelds, unter eigener derber Faszie. Nur der obere Teil ist modelliert.</translation>
    </message>
    <message>
      <source>outer face of the ilium between the gluteal lines</source>
      <translation>Außenfläche der Ala ossis ilii zwischen den Lineae gluteae</translation>
    </message>
    <message>
      <source>outer face of the greater trochanter of the femur</source>
      <translation>Außenfläche des Trochanter major des Femurs</translation>
    </message>
    <message>
      <source>abducts the hip</source>
      <translation>abduziert die Hüfte</translation>
    </message>
    <message>
      <source>steadies the pelvis in walking</source>
      <translation>hält beim Gehen das Becken</translation>
    </message>
    <message>
      <source>intercostal nerves 2 to 5 (anterior rami)</source>
      <translation>Nn. intercostales 2 bis 5 (Rami anteriores)</translation>
    </message>
    <message>
      <source>Half of it is sheet tendon and paper thin: a careless finger lifts it off with the rhomboids.</source>
      <translation>Zur Hälfte Sehnenplatte und dünn wie Papier: Ein unachtsamer Finger hebt ihn mit den Mm. rhomboidei ab.</translation>
    </message>
    <message>
      <source>spinous processes of C7 to T2</source>
      <translation>Dornfortsätze C7 bis T2</translation>
    </message>
    <message>
      <source>often T3</source>
      <translation>oft T3</translation>
    </message>
    <message>
      <source>upper borders of ribs 2 to 5, a little lateral to their angles</source>
      <translation>Oberränder der 2. bis 5. Rippe, etwas lateral ihrer Anguli</translation>
    </message>
    <message>
      <source>said to lift ribs 2 to 5 (disputed)</source>
      <translation>soll die 2. bis 5. Rippe heben (umstritten)</translation>
    </message>
    <message>
      <source>Its function is disputed: no part in breathing could be shown in 50 cadavers (Loukas 2008); position sense has been proposed.</source>
      <translation>Seine Funktion ist umstritten: An 50 Leichen ließ sich kein Anteil an der Atmung zeigen (Loukas 2008); vorgeschlagen wurde eine propriozeptive Aufgabe.</translation>
    </message>
    <message>
      <source>anterior rami T9 to T12</source>
      <translation>Rami anteriores T9 bis T12</translation>
    </message>
    <message>
      <source>posterior intercostal and subcostal arteries</source>
      <translation>Aa. intercostales posteriores und A. subcostalis</translation>
    </message>
    <message>
      <source>It slopes up and out, its partner above down and out: two closing shutters with an empty gap between.</source>
      <translation>Er steigt nach außen an, sein oberes Gegenstück fällt nach außen ab: zwei schließende Läden mit einer leeren Lücke dazwischen.</translation>
    </message>
    <message>
      <source>spinous processes of T11 to L2, through the thoracolumbar fascia</source>
      <translation>Dornfortsätze T11 bis L2, über die Fascia thoracolumbalis</translation>
    </message>
    <message>
      <source>sometimes L3</source>
      <translation>manchmal L3</translation>
    </message>
    <message>
      <source>lower borders of ribs 9 to 12, a little lateral to their angles</source>
      <translation>Unterränder der 9. bis 12. Rippe, etwas lateral ihrer Anguli</translation>
    </message>
    <message>
      <source>said to draw ribs 9 to 12 down (disputed)</source>
      <translation>soll die 9. bis 12. Rippe senken (umstritten)</translation>
    </message>
    <message>
      <source>Its function is disputed: no part in breathing could be shown in 50 cadavers (Loukas 2008).</source>
      <translation>Seine Funktion ist umstritten: An 50 Leichen ließ sich kein Anteil an der Atmung zeigen (Loukas 2008).</translation>
    </message>
    <message>
      <source>long thoracic nerve (C5 to C7)</source>
      <translation>N. thoracicus longus (C5 bis C7)</translation>
    </message>
    <message>
      <source>lateral thoracic and thoracodorsal arteries</source>
      <translation>A. thoracica lateralis und A. thoracodorsalis</translation>
    </message>
    <message>
      <source>The same border as the rhomboids, from the other side: fold the rhomboids and you feel it.</source>
      <translation>Derselbe Rand wie bei den Mm. rhomboidei, von der anderen Seite: Klappen Sie die Mm. rhomboidei um, und Sie tasten ihn.</translation>
    </message>
    <message>
      <source>outer faces of ribs 1 to 8</source>
      <translation>Außenflächen der 1. bis 8. Rippe</translation>
    </message>
    <message>
      <source>often rib 9</source>
      <translation>oft 9. Rippe</translation>
    </message>
    <message>
      <source>costal face of the medial border of the scapula</source>
      <translation>Facies costalis am Margo medialis der Scapula</translation>
    </message>
    <message>
      <source>draws the scapula forward round the chest</source>
      <translation>zieht die Scapula um den Brustkorb nach vorn</translation>
    </message>
    <message>
      <source>its lower part turns the glenoid cavity up</source>
      <translation>sein unterer Teil dreht die Cavitas glenoidalis nach oben</translation>
    </message>
    <message>
      <source>lateral branches of posterior rami of the middle cervical nerves</source>
      <translation>Rami laterales der Rami posteriores der mittleren Zervikalnerven</translation>
    </message>
    <message>
      <source>occipital artery (descending branch); deep cervical artery</source>
      <translation>A. occipitalis (Ramus descendens); A. cervicalis profunda</translation>
    </message>
    <message>
      <source>Its fibres run up and out, against those of everything under it: the direction tells which layer you are in.</source>
      <translation>Seine Fasern steigen nach außen an, gegen alles, was unter ihm liegt: Die Richtung sagt, in welcher Schicht man ist.</translation>
    </message>
    <message>
      <source>lower half of the nuchal ligament</source>
      <translation>untere Hälfte des Lig. nuchae</translation>
    </message>
    <message>
      <source>spinous processes of C7 to T3</source>
      <translation>Dornfortsätze C7 bis T3</translation>
    </message>
    <message>
      <source>often T4</source>
      <translation>oft T4</translation>
    </message>
    <message>
      <source>mastoid process, under sternocleidomastoid</source>
      <translation>Proc. mastoideus, unter dem M. sternocleidomastoideus</translation>
    </message>
    <message>
      <source>occipital bone just below the lateral third of the superior nuchal line</source>
      <translation>Os occipitale knapp unter dem lateralen Drittel der Linea nuchalis superior</translation>
    </message>
    <message>
      <source>extends the head</source>
      <translation>streckt den Kopf</translation>
    </message>
    <message>
      <source>turns the head to its own side</source>
      <translation>dreht den Kopf zur eigenen Seite</translation>
    </message>
    <message>
      <source>lateral branches of posterior rami of the lower cervical nerves</source>
      <translation>Rami laterales der Rami posteriores der unteren Zervikalnerven</translation>
    </message>
    <message>
      <source>Lower and outer part of the same bandage; it ends beside levator scapulae on the same processes.</source>
      <translation>Unterer, äußerer Teil derselben Binde; er endet neben dem M. levator scapulae an denselben Fortsätzen.</translation>
    </message>
    <message>
      <source>spinous processes of T3 to T6</source>
      <translation>Dornfortsätze T3 bis T6</translation>
    </message>
    <message>
      <source>transverse process of C1</source>
      <translation>Querfortsatz von C1</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C2 and often C3</source>
      <translation>Tubercula posteriora der Querfortsätze von C2 und oft C3</translation>
    </message>
    <message>
      <source>extends the neck</source>
      <translation>streckt den Hals</translation>
    </message>
    <message>
      <source>turns the neck to its own side</source>
      <translation>dreht den Hals zur eigenen Seite</translation>
    </message>
    <message>
      <source>anterior rami of the lower cervical nerves</source>
      <translation>Rami anteriores der unteren Zervikalnerven</translation>
    </message>
    <message>
      <source>inferior thyroid artery (ascending cervical branch)</source>
      <translation>A. thyroidea inferior (A. cervicalis ascendens)</translation>
    </message>
    <message>
      <source>Context only: it lies in front of the roots of the brachial plexus and is not met from behind.</source>
      <translation>Nur zur Orientierung: Er liegt vor den Wurzeln des Plexus brachialis und wird von hinten nicht angetroffen.</translation>
    </message>
    <message>
      <source>anterior tubercles of the transverse processes of C3 to C6</source>
      <translation>Tubercula anteriora der Querfortsätze C3 bis C6</translation>
    </message>
    <message>
      <source>scalene tubercle of the first rib</source>
      <translation>Tuberculum musculi scaleni anterioris der 1. Rippe</translation>
    </message>
    <message>
      <source>lifts the first rib</source>
      <translation>hebt die 1. Rippe</translation>
    </message>
    <message>
      <source>anterior rami of the cervical nerves</source>
      <translation>Rami anteriores der Zervikalnerven</translation>
    </message>
    <message>
      <source>ascending cervical artery</source>
      <translation>A. cervicalis ascendens</translation>
    </message>
    <message>
      <source>The dorsal scapular nerve usually comes through it (about three quarters of one series).</source>
      <translation>Der N. dorsalis scapulae tritt meist durch ihn hindurch (etwa drei Viertel einer Reihe).</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C2 to C7</source>
      <translation>Tubercula posteriora der Querfortsätze C2 bis C7</translation>
    </message>
    <message>
      <source>first rib, behind the groove of the subclavian artery</source>
      <translation>1. Rippe, hinter dem Sulcus arteriae subclaviae</translation>
    </message>
    <message>
      <source>anterior rami of the lowest cervical nerves</source>
      <translation>Rami anteriores der untersten Zervikalnerven</translation>
    </message>
    <message>
      <source>Often run together with scalenus medius; told apart by ending on the second rib.</source>
      <translation>Oft mit dem M. scalenus medius verwachsen; an seinem Ende an der 2. Rippe zu erkennen.</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C5 to C7</source>
      <translation>Tubercula posteriora der Querfortsätze C5 bis C7</translation>
    </message>
    <message>
      <source>outer face of the second rib</source>
      <translation>Außenfläche der 2. Rippe</translation>
    </message>
    <message>
      <source>lifts the second rib</source>
      <translation>hebt die 2. Rippe</translation>
    </message>
    <message>
      <source>lumbar, subcostal and posterior intercostal arteries</source>
      <translation>Aa. lumbales, A. subcostalis und Aa. intercostales posteriores</translation>
    </message>
    <message>
      <source>Outermost of the three columns; its outer edge is the lateral raphe. Name a column by where it ends: rib, transverse process or spine.</source>
      <translation>Die äußerste der drei Säulen; ihr Außenrand ist die laterale Raphe. Benennen Sie eine Säule nach ihrem Ende: Rippe, Querfortsatz oder Dornfortsatz.</translation>
    </message>
    <message>
      <source>iliac crest lateral to the posterior superior spine</source>
      <translation>Crista iliaca lateral der Spina iliaca posterior superior</translation>
    </message>
    <message>
      <source>lower borders of the angles of ribs 7 to 12</source>
      <translation>Unterränder der Anguli der 7. bis 12. Rippe</translation>
    </message>
    <message>
      <source>often rib 6</source>
      <translation>oft 6. Rippe</translation>
    </message>
    <message>
      <source>tips of the transverse processes of L1 to L4 (lumbar part)</source>
      <translation>Spitzen der Querfortsätze L1 bis L4 (lumbaler Teil)</translation>
    </message>
    <message>
      <source>extends the trunk</source>
      <translation>streckt den Rumpf</translation>
    </message>
    <message>
      <source>Six or seven ribs (Gray), five to twelve in later accounts.</source>
      <translation>Sechs oder sieben Rippen (Gray), fünf bis zwölf in späteren Beschreibungen.</translation>
    </message>
    <message>
      <source>It starts just inside the ends of the part below: relays, not one long strand.</source>
      <translation>Er beginnt medial der Enden des Teils darunter: ein Staffellauf, kein langer Strang.</translation>
    </message>
    <message>
      <source>upper borders of the angles of ribs 7 to 12, medial to the ends of iliocostalis lumborum</source>
      <translation>Oberränder der Anguli der 7. bis 12. Rippe, medial der Enden des M. iliocostalis lumborum</translation>
    </message>
    <message>
      <source>upper borders of the angles of ribs 1 to 6</source>
      <translation>Oberränder der Anguli der 1. bis 6. Rippe</translation>
    </message>
    <message>
      <source>back of the transverse process of C7</source>
      <translation>Rückseite des Querfortsatzes von C7</translation>
    </message>
    <message>
      <source>extends the chest</source>
      <translation>streckt die Brustwirbelsäule</translation>
    </message>
    <message>
      <source>bends the chest to its side</source>
      <translation>neigt die Brustwirbelsäule zur eigenen Seite</translation>
    </message>
    <message>
      <source>deep cervical and posterior intercostal arteries</source>
      <translation>A. cervicalis profunda und Aa. intercostales posteriores</translation>
    </message>
    <message>
      <source>Thin slips at the outer edge, often taken for part of longissimus.</source>
      <translation>Dünne Zacken am Außenrand, oft für einen Teil des M. longissimus gehalten.</translation>
    </message>
    <message>
      <source>angles of ribs 3 to 6</source>
      <translation>Anguli der 3. bis 6. Rippe</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C4 to C6</source>
      <translation>Tubercula posteriora der Querfortsätze C4 bis C6</translation>
    </message>
    <message>
      <source>lateral and intermediate branches of posterior rami</source>
      <translation>Rami laterales und intermedii der Rami posteriores</translation>
    </message>
    <message>
      <source>posterior intercostal and lumbar arteries</source>
      <translation>Aa. intercostales posteriores und Aa. lumbales</translation>
    </message>
    <message>
      <source>Largest column; two rows of ends, the inner to transverse processes and the outer to ribs. Its lumbar part lies deep to the aponeurosis, which is the long tendon of its thoracic part.</source>
      <translation>Die größte Säule; zwei Reihen von Enden, die innere an Querfortsätzen, die äußere an Rippen. Ihr lumbaler Teil liegt unter der Aponeurose, die die lange Sehne ihres thorakalen Teils ist.</translation>
    </message>
    <message>
      <source>erector spinae aponeurosis, and through it the lumbar and sacral spines and the back of the sacrum</source>
      <translation>Aponeurose des M. erector spinae und über sie die Dornfortsätze von Lende und Sacrum und die Rückfläche des Sacrums</translation>
    </message>
    <message>
      <source>posterior superior iliac spine (lumbar part)</source>
      <translation>Spina iliaca posterior superior (lumbaler Teil)</translation>
    </message>
    <message>
      <source>tips of the transverse processes of T1 to T12</source>
      <translation>Spitzen der Querfortsätze T1 bis T12</translation>
    </message>
    <message>
      <source>ribs 3 or 4 to 12, between tubercle and angle</source>
      <translation>3. oder 4. bis 12. Rippe, zwischen Tuberculum und Angulus</translation>
    </message>
    <message>
      <source>accessory processes and medial parts of the transverse processes of L1 to L5 (lumbar part)</source>
      <translation>Procc. accessorii und mediale Teile der Querfortsätze L1 bis L5 (lumbaler Teil)</translation>
    </message>
    <message>
      <source>Lowest number of the rib ends: 3 or 4 to 12.</source>
      <translation>Oberstes Rippenende: die 3. oder die 4. bis zur 12. Rippe.</translation>
    </message>
    <message>
      <source>It lies between iliocostalis cervicis outside and longissimus capitis inside.</source>
      <translation>Er liegt zwischen dem M. iliocostalis cervicis (außen) und dem M. longissimus capitis (innen).</translation>
    </message>
    <message>
      <source>transverse processes of T1 to T4</source>
      <translation>Querfortsätze T1 bis T4</translation>
    </message>
    <message>
      <source>often T5</source>
      <translation>oft T5</translation>
    </message>
    <message>
      <source>posterior tubercles of the transverse processes of C2 to C6</source>
      <translation>Tubercula posteriora der Querfortsätze C2 bis C6</translation>
    </message>
    <message>
      <source>posterior rami of the cervical nerves</source>
      <translation>Rami posteriores der Zervikalnerven</translation>
    </message>
    <message>
      <source>occipital and deep cervical arteries</source>
      <translation>A. occipitalis und A. cervicalis profunda</translation>
    </message>
    <message>
      <source>The one column of erector spinae that reaches the skull, by a narrow strap under splenius.</source>
      <translation>Die einzige Säule des M. erector spinae, die den Schädel erreicht, mit einem schmalen Riemen unter dem M. splenius.</translation>
    </message>
    <message>
      <source>articular processes of C4 to C7</source>
      <translation>Gelenkfortsätze von C4 bis C7</translation>
    </message>
    <message>
      <source>back edge of the mastoid process, under splenius and sternocleidomastoid</source>
      <translation>Hinterrand des Proc. mastoideus, unter M. splenius und M. sternocleidomastoideus</translation>
    </message>
    <message>
      <source>A thin strip of tendon and muscle against the spines; it misses T9 and T10, and is often clear only at mid-chest.</source>
      <translation>Ein dünner Streifen aus Sehne und Muskel an den Dornfortsätzen; er lässt T9 und T10 aus und ist oft nur in der Mitte der Brust deutlich.</translation>
    </message>
    <message>
      <source>spinous processes of T11 to L2</source>
      <translation>Dornfortsätze T11 bis L2</translation>
    </message>
    <message>
      <source>spinous processes of T1 or T2 to T8</source>
      <translation>Dornfortsätze T1 oder T2 bis T8</translation>
    </message>
    <message>
      <source>Branch of the posterior ramus: medial in some books, lateral in others.</source>
      <translation>Ast des Ramus posterior: in manchen Büchern der mediale, in anderen der laterale.</translation>
    </message>
    <message>
      <source>Four to eight upper spines (Gray, Cunningham).</source>
      <translation>Vier bis acht obere Dornfortsätze (Gray, Cunningham).</translation>
    </message>
    <message>
      <source>Erector spinae by name, yet deeper than semispinalis capitis; often small or absent, so not finding it is no fault.</source>
      <translation>Dem Namen nach M. erector spinae und doch tiefer als der M. semispinalis capitis; oft klein oder fehlend, ihn nicht zu finden ist also kein Fehler.</translation>
    </message>
    <message>
      <source>spinous process of C7</source>
      <translation>Dornfortsatz von C7</translation>
    </message>
    <message>
      <source>sometimes T1 and T2</source>
      <translation>manchmal T1 und T2</translation>
    </message>
    <message>
      <source>spinous process of the axis</source>
      <translation>Dornfortsatz des Axis</translation>
    </message>
    <message>
      <source>sometimes C3 and C4</source>
      <translation>manchmal C3 und C4</translation>
    </message>
    <message>
      <source>posterior rami of the cervical nerves; also the suboccipital and greater occipital nerves</source>
      <translation>Rami posteriores der Zervikalnerven; auch N. suboccipitalis und N. occipitalis major</translation>
    </message>
    <message>
      <source>The thick, nearly upright rope of the nape with a tendon band across it; the greater occipital nerve comes through. Its inner part is what books call spinalis capitis.</source>
      <translation>Der dicke, fast senkrechte Strang des Nackens mit einer quer verlaufenden Zwischensehne; der N. occipitalis major tritt hindurch. Sein innerer Teil ist das, was Bücher M. spinalis capitis nennen.</translation>
    </message>
    <message>
      <source>tips of the transverse processes of C7 and T1 to T6</source>
      <translation>Spitzen der Querfortsätze von C7 und T1 bis T6</translation>
    </message>
    <message>
      <source>often T7</source>
      <translation>oft T7</translation>
    </message>
    <message>
      <source>articular processes of C4 to C6</source>
      <translation>Gelenkfortsätze von C4 bis C6</translation>
    </message>
    <message>
      <source>medial part of the occipital bone between the nuchal lines</source>
      <translation>medialer Teil des Os occipitale zwischen den Lineae nuchales</translation>
    </message>
    <message>
      <source>Its slip to the axis is the thickest and is the lower landmark of the suboccipital region.</source>
      <translation>Seine Zacke zum Axis ist die dickste und die untere Landmarke der Subokzipitalregion.</translation>
    </message>
    <message>
      <source>transverse processes of T1 to T5</source>
      <translation>Querfortsätze T1 bis T5</translation>
    </message>
    <message>
      <source>often T6</source>
      <translation>oft T6</translation>
    </message>
    <message>
      <source>spinous processes of C2 to C5</source>
      <translation>Dornfortsätze C2 bis C5</translation>
    </message>
    <message>
      <source>turns the neck to the opposite side</source>
      <translation>dreht den Hals zur Gegenseite</translation>
    </message>
    <message>
      <source>It spans five to seven levels: the longest reach of the slanting group.</source>
      <translation>Er überspringt fünf bis sieben Wirbel: die längsten Züge des schrägen Systems.</translation>
    </message>
    <message>
      <source>transverse processes of T6 to T10</source>
      <translation>Querfortsätze T6 bis T10</translation>
    </message>
    <message>
      <source>spinous processes of C6 to T4</source>
      <translation>Dornfortsätze C6 bis T4</translation>
    </message>
    <message>
      <source>turns it to the opposite side</source>
      <translation>dreht sie zur Gegenseite</translation>
    </message>
    <message>
      <source>Its highest end is the axis: nothing of it reaches the atlas.</source>
      <translation>Sein oberstes Ende ist der Axis: Nichts von ihm erreicht den Atlas.</translation>
    </message>
    <message>
      <source>transverse processes of T1 and T2</source>
      <translation>Querfortsätze von T1 und T2</translation>
    </message>
    <message>
      <source>spinous processes of C2 to C6</source>
      <translation>Dornfortsätze C2 bis C6</translation>
    </message>
    <message>
      <source>extends and steadies the neck</source>
      <translation>streckt und stabilisiert den Hals</translation>
    </message>
    <message>
      <source>Thin here; the bulk of multifidus is in the loin. Its fibres run up and medially.</source>
      <translation>Hier dünn; die Masse des M. multifidus liegt in der Lende. Seine Fasern steigen nach medial an.</translation>
    </message>
    <message>
      <source>transverse processes of the thoracic vertebrae</source>
      <translation>Querfortsätze der Brustwirbel</translation>
    </message>
    <message>
      <source>mamillary processes of L1 and L2</source>
      <translation>Procc. mamillares von L1 und L2</translation>
    </message>
    <message>
      <source>spinous processes two to four levels above</source>
      <translation>Dornfortsätze zwei bis vier Wirbel höher</translation>
    </message>
    <message>
      <source>extends and steadies the chest</source>
      <translation>streckt und stabilisiert die Brustwirbelsäule</translation>
    </message>
    <message>
      <source>It fills the hollow over the sacrum under the shared tendon and is the only dorsal muscle that faces the surface at the lumbosacral junction.</source>
      <translation>Er füllt unter der gemeinsamen Sehne die Mulde über dem Sacrum und ist der einzige Rückenmuskel, der am lumbosakralen Übergang der Oberfläche zugewandt ist.</translation>
    </message>
    <message>
      <source>mamillary processes of the lumbar vertebrae</source>
      <translation>Procc. mamillares der Lendenwirbel</translation>
    </message>
    <message>
      <source>back of the sacrum, down to about the fourth foramen</source>
      <translation>Rückfläche des Sacrums, bis etwa zum vierten Foramen</translation>
    </message>
    <message>
      <source>deep face of the erector spinae aponeurosis</source>
      <translation>Unterseite der Aponeurose des M. erector spinae</translation>
    </message>
    <message>
      <source>spinous processes of L1 to L5, two to five levels above</source>
      <translation>Dornfortsätze L1 bis L5, zwei bis fünf Wirbel höher</translation>
    </message>
    <message>
      <source>spinous process of T12</source>
      <translation>Dornfortsatz von T12</translation>
    </message>
    <message>
      <source>extends and steadies the loin</source>
      <translation>streckt und stabilisiert die Lende</translation>
    </message>
    <message>
      <source>turns it a little to the opposite side</source>
      <translation>dreht sie ein wenig zur Gegenseite</translation>
    </message>
    <message>
      <source>dorsal branches of posterior intercostal arteries</source>
      <translation>Rami dorsales der Aa. intercostales posteriores</translation>
    </message>
    <message>
      <source>Goes one level and runs nearly level; best shown in the mid-chest window. Named here by the vertebra of origin.</source>
      <translation>Überbrückt einen Zwischenwirbelraum und verläuft fast waagerecht; am besten im Fenster in der Brustmitte zu zeigen. Hier nach dem Ursprungswirbel benannt.</translation>
    </message>
    <message>
      <source>transverse process</source>
      <translation>Querfortsatz</translation>
    </message>
    <message>
      <source>lamina and root of the spinous process of the next vertebra above</source>
      <translation>Lamina und Wurzel des Dornfortsatzes des nächsthöheren Wirbels</translation>
    </message>
    <message>
      <source>turns the vertebra to the opposite side</source>
      <translation>dreht den Wirbel zur Gegenseite</translation>
    </message>
    <message>
      <source>rich in stretch receptors</source>
      <translation>reich an Muskelspindeln</translation>
    </message>
    <message>
      <source>Goes two levels; lies just deep to multifidus. Named here by the vertebra of origin.</source>
      <translation>Überspringt einen Wirbel; liegt unmittelbar unter dem M. multifidus. Hier nach dem Ursprungswirbel benannt.</translation>
    </message>
    <message>
      <source>root of the spinous process of the next vertebra but one above</source>
      <translation>Wurzel des Dornfortsatzes des übernächsten höheren Wirbels</translation>
    </message>
    <message>
      <source>Gray describes only the short ones; later books add the long.</source>
      <translation>Gray beschreibt nur die kurzen; spätere Bücher fügen die langen hinzu.</translation>
    </message>
    <message>
      <source>Neck and loin only; mostly missing from T2 to T11.</source>
      <translation>Nur an Hals und Lende; von T2 bis T11 fehlen sie meist.</translation>
    </message>
    <message>
      <source>spinous process of the lower vertebra</source>
      <translation>Dornfortsatz des unteren Wirbels</translation>
    </message>
    <message>
      <source>spinous process of the upper vertebra, beside the interspinous ligament</source>
      <translation>Dornfortsatz des oberen Wirbels, neben dem Lig. interspinale</translation>
    </message>
    <message>
      <source>extends a little and steadies</source>
      <translation>streckt ein wenig und stabilisiert</translation>
    </message>
    <message>
      <source>Four pairs between the five lumbar spines; one above, to T12, is occasional.</source>
      <translation>Vier Paare zwischen den fünf Lendendornfortsätzen; eines darüber, zu T12, kommt gelegentlich vor.</translation>
    </message>
    <message>
      <source>T12 to L1, and L5 to the sacrum, are 'occasional' in Gray.</source>
      <translation>T12 zu L1 und L5 zum Sacrum sind bei Gray „gelegentlich“.</translation>
    </message>
    <message>
      <source>anterior rami</source>
      <translation>Rami anteriores</translation>
    </message>
    <message>
      <source>vertebral and ascending cervical arteries</source>
      <translation>A. vertebralis und A. cervicalis ascendens</translation>
    </message>
    <message>
      <source>The anterior ramus of the cervical nerve passes between the anterior and the posterior one.</source>
      <translation>Der Ramus anterior des Zervikalnervs tritt zwischen dem vorderen und dem hinteren hindurch.</translation>
    </message>
    <message>
      <source>anterior tubercle of the lower vertebra</source>
      <translation>Tuberculum anterius des unteren Wirbels</translation>
    </message>
    <message>
      <source>anterior tubercle of the upper vertebra</source>
      <translation>Tuberculum anterius des oberen Wirbels</translation>
    </message>
    <message>
      <source>bends the neck a little to its side and steadies</source>
      <translation>neigt den Hals ein wenig zur eigenen Seite und stabilisiert</translation>
    </message>
    <message>
      <source>Gray counts seven pairs, from the atlas to T1; the lowest of the anterior ones is left out here, since T1 has no anterior tubercle.</source>
      <translation>Gray zählt sieben Paare, vom Atlas bis T1; das unterste der vorderen ist hier weggelassen, weil T1 kein Tuberculum anterius hat.</translation>
    </message>
    <message>
      <source>medial part posterior rami, lateral part anterior rami</source>
      <translation>medialer Teil: Rami posteriores, lateraler Teil: Rami anteriores</translation>
    </message>
    <message>
      <source>vertebral and deep cervical arteries</source>
      <translation>A. vertebralis und A. cervicalis profunda</translation>
    </message>
    <message>
      <source>Mixed nerve supply: not all of these are true back muscles.</source>
      <translation>Gemischte Innervation: Nicht alle von ihnen sind autochthone Rückenmuskeln.</translation>
    </message>
    <message>
      <source>posterior tubercle or tip of the transverse process of the lower vertebra</source>
      <translation>Tuberculum posterius oder Spitze des Querfortsatzes des unteren Wirbels</translation>
    </message>
    <message>
      <source>posterior tubercle or tip of the transverse process of the upper vertebra</source>
      <translation>Tuberculum posterius oder Spitze des Querfortsatzes des oberen Wirbels</translation>
    </message>
    <message>
      <source>Gray gives both cervical sets to anterior divisions; later books divide the posterior set between the rami.</source>
      <translation>Gray ordnet beide zervikalen Gruppen den vorderen Ästen zu; spätere Bücher teilen die hintere Gruppe zwischen den Rami auf.</translation>
    </message>
    <message>
      <source>From accessory to mamillary process, behind the lateral ones: a true back muscle by its nerve.</source>
      <translation>Vom Proc. accessorius zum Proc. mamillaris, hinter den lateralen: dem Nerv nach ein autochthoner Rückenmuskel.</translation>
    </message>
    <message>
      <source>mamillary process of the lower vertebra</source>
      <translation>Proc. mamillaris des unteren Wirbels</translation>
    </message>
    <message>
      <source>accessory process of the upper vertebra</source>
      <translation>Proc. accessorius des oberen Wirbels</translation>
    </message>
    <message>
      <source>steadies the lumbar joints</source>
      <translation>stabilisiert die Lendengelenke</translation>
    </message>
    <message>
      <source>Between transverse processes; by their nerve they belong to the body wall.</source>
      <translation>Zwischen den Querfortsätzen; dem Nerv nach gehören sie zur Rumpfwand.</translation>
    </message>
    <message>
      <source>transverse process of the lower vertebra</source>
      <translation>Querfortsatz des unteren Wirbels</translation>
    </message>
    <message>
      <source>transverse process of the upper vertebra</source>
      <translation>Querfortsatz des oberen Wirbels</translation>
    </message>
    <message>
      <source>bends the loin a little to its side and steadies</source>
      <translation>neigt die Lende ein wenig zur eigenen Seite und stabilisiert</translation>
    </message>
    <message>
      <source>posterior rami (sources differ: anterior rami)</source>
      <translation>Rami posteriores (nach anderen Quellen Rami anteriores)</translation>
    </message>
    <message>
      <source>Twelve little fans a side on the backs of the ribs. Named here by the vertebra of origin.</source>
      <translation>Zwölf kleine Fächer je Seite auf der Rückseite der Rippen. Hier nach dem Ursprungswirbel benannt.</translation>
    </message>
    <message>
      <source>tip of the transverse process</source>
      <translation>Spitze des Querfortsatzes</translation>
    </message>
    <message>
      <source>next rib below, between tubercle and angle</source>
      <translation>nächsttiefere Rippe, zwischen Tuberculum und Angulus</translation>
    </message>
    <message>
      <source>lifts the rib a little</source>
      <translation>hebt die Rippe ein wenig</translation>
    </message>
    <message>
      <source>Nerve: lateral branches of posterior rami C8 to T11 in later work; intercostal nerves in older books, Gray among them.</source>
      <translation>Nerv: Rami laterales der Rami posteriores C8 bis T11 nach neueren Arbeiten; Nn. intercostales in älteren Büchern, darunter Gray.</translation>
    </message>
    <message>
      <source>Only the lowest four or so: they skip a rib.</source>
      <translation>Nur etwa die untersten vier: Sie überspringen eine Rippe.</translation>
    </message>
    <message>
      <source>second rib below, between tubercle and angle</source>
      <translation>übernächste Rippe darunter, zwischen Tuberculum und Angulus</translation>
    </message>
    <message>
      <source>Nerve: as for the short ones, sources differ.</source>
      <translation>Nerv: Wie bei den kurzen gehen die Quellen auseinander.</translation>
    </message>
    <message>
      <source>suboccipital nerve (posterior ramus of C1)</source>
      <translation>N. suboccipitalis (Ramus posterior von C1)</translation>
    </message>
    <message>
      <source>vertebral and occipital arteries</source>
      <translation>A. vertebralis und A. occipitalis</translation>
    </message>
    <message>
      <source>Upper inner side of the suboccipital triangle; it widens as it goes up.</source>
      <translation>Obere innere Seite des Trigonum suboccipitale; er wird nach oben breiter.</translation>
    </message>
    <message>
      <source>lateral part of the inferior nuchal line and the bone just below it</source>
      <translation>lateraler Teil der Linea nuchalis inferior und der Knochen knapp darunter</translation>
    </message>
    <message>
      <source>Not a side of the triangle, though it is always asked for; often tied to the dura.</source>
      <translation>Keine Seite des Dreiecks, obwohl immer nach ihm gefragt wird; oft mit der Dura verbunden.</translation>
    </message>
    <message>
      <source>medial part of the inferior nuchal line and the bone between it and the foramen magnum</source>
      <translation>medialer Teil der Linea nuchalis inferior und der Knochen zwischen ihr und dem Foramen magnum</translation>
    </message>
    <message>
      <source>It touches no skull although named for the head; the greater occipital nerve curls round its lower edge.</source>
      <translation>Er berührt den Schädel nicht, obwohl er nach dem Kopf heißt; der N. occipitalis major schlingt sich um seinen Unterrand.</translation>
    </message>
    <message>
      <source>apex of the spinous process of the axis</source>
      <translation>Spitze des Dornfortsatzes des Axis</translation>
    </message>
    <message>
      <source>lower back part of the transverse process of the atlas</source>
      <translation>unterer hinterer Teil des Querfortsatzes des Atlas</translation>
    </message>
    <message>
      <source>turns the face to its own side</source>
      <translation>dreht das Gesicht zur eigenen Seite</translation>
    </message>
    <message>
      <source>Outer side of the triangle; it lies lateral to the end of semispinalis.</source>
      <translation>Äußere Seite des Dreiecks; er liegt lateral vom Ende des M. semispinalis.</translation>
    </message>
    <message>
      <source>upper face of the transverse process of the atlas</source>
      <translation>Oberseite des Querfortsatzes des Atlas</translation>
    </message>
    <message>
      <source>occipital bone between the nuchal lines, lateral to semispinalis capitis</source>
      <translation>Os occipitale zwischen den Lineae nuchales, lateral vom M. semispinalis capitis</translation>
    </message>
    <message>
      <source>bends the head to its own side</source>
      <translation>neigt den Kopf zur eigenen Seite</translation>
    </message>
    <message>
      <source>intercostal nerve of the same space</source>
      <translation>N. intercostalis desselben Zwischenrippenraums</translation>
    </message>
    <message>
      <source>posterior intercostal artery</source>
      <translation>A. intercostalis posterior</translation>
    </message>
    <message>
      <source>Seen between the ribs beside the columns; behind, the fibres look down and outward.</source>
      <translation>Zwischen den Rippen neben den Säulen zu sehen; hinten ziehen die Fasern nach außen unten.</translation>
    </message>
    <message>
      <source>lower border of the rib above, from tubercle to cartilage</source>
      <translation>Unterrand der oberen Rippe, vom Tuberculum bis zum Knorpel</translation>
    </message>
    <message>
      <source>upper border of the rib below</source>
      <translation>Oberrand der unteren Rippe</translation>
    </message>
    <message>
      <source>lifts the ribs</source>
      <translation>hebt die Rippen</translation>
    </message>
    <message>
      <source>anterior rami T12 to L4</source>
      <translation>Rami anteriores T12 bis L4</translation>
    </message>
    <message>
      <source>lumbar and iliolumbar arteries</source>
      <translation>Aa. lumbales und A. iliolumbalis</translation>
    </message>
    <message>
      <source>Not a back muscle by its nerve; seen in the loin section and through the window, on the far side of the middle layer.</source>
      <translation>Dem Nerv nach kein Rückenmuskel; im Lendenschnitt und durch das Fenster zu sehen, auf der anderen Seite der Lamina media.</translation>
    </message>
    <message>
      <source>iliac crest for about 5 cm</source>
      <translation>Crista iliaca über etwa 5 cm</translation>
    </message>
    <message>
      <source>medial half of the lower border of rib 12</source>
      <translation>mediale Hälfte des Unterrands der 12. Rippe</translation>
    </message>
    <message>
      <source>holds rib 12 down</source>
      <translation>hält die 12. Rippe unten</translation>
    </message>
    <message>
      <source>anterior rami L1 to L3</source>
      <translation>Rami anteriores L1 bis L3</translation>
    </message>
    <message>
      <source>For sections only: it tells the reader which way is front.</source>
      <translation>Nur für Schnitte: Er zeigt, wo vorn ist.</translation>
    </message>
    <message>
      <source>sides of the bodies and discs of T12 to L5</source>
      <translation>Seiten der Wirbelkörper und Bandscheiben von T12 bis L5</translation>
    </message>
    <message>
      <source>fronts of the transverse processes of L1 to L5</source>
      <translation>Vorderflächen der Querfortsätze L1 bis L5</translation>
    </message>
    <message>
      <source>lesser trochanter of the femur</source>
      <translation>Trochanter minor des Femurs</translation>
    </message>
    <message>
      <source>flexes the hip</source>
      <translation>beugt die Hüfte</translation>
    </message>
    <message>
      <source>Leaves the back edge of sternocleidomastoid, crosses the posterior triangle on levator scapulae, enters the deep face of trapezius 3 to 5 cm above the clavicle, and slopes down near the medial border of the scapula.</source>
      <translation>Verlässt den Hinterrand des M. sternocleidomastoideus, durchquert das seitliche Halsdreieck auf dem M. levator scapulae, tritt 3 bis 5 cm über der Clavicula in die Unterseite des M. trapezius und läuft nahe dem Margo medialis der Scapula schräg abwärts.</translation>
    </message>
    <message>
      <source>It stays on the folded muscle: if it lies on the chest after folding, the wrong plane was entered.</source>
      <translation>Er bleibt am umgeklappten Muskel: Liegt er nach dem Umklappen auf dem Brustkorb, war es die falsche Schicht.</translation>
    </message>
    <message>
      <source>From the anterior rami of C3 and C4 by the cervical plexus, across the posterior triangle below the accessory nerve, to join it under trapezius.</source>
      <translation>Aus den Rami anteriores von C3 und C4 über den Plexus cervicalis, durch das seitliche Halsdreieck unterhalb des N. accessorius, mit dem sie sich unter dem M. trapezius verbinden.</translation>
    </message>
    <message>
      <source>Thinner than the accessory nerve and from the front: trace both before naming.</source>
      <translation>Dünner als der N. accessorius und von vorn kommend: Verfolgen Sie beide, bevor Sie sie benennen.</translation>
    </message>
    <message>
      <source>From the anterior ramus of C5, often C4, through scalenus medius, deep to levator scapulae and the rhomboids, 1 to 2 cm medial to the medial border of the scapula.</source>
      <translation>Aus dem Ramus anterior von C5, oft C4, durch den M. scalenus medius, unter M. levator scapulae und Mm. rhomboidei, 1 bis 2 cm medial vom Margo medialis der Scapula.</translation>
    </message>
    <message>
      <source>It lies on the deep face of the rhomboids: cut them at the spines, never at the border.</source>
      <translation>Er liegt auf der Unterseite der Mm. rhomboidei: An den Dornfortsätzen schneiden, nie am Margo medialis.</translation>
    </message>
    <message>
      <source>Root C5 in about 70 %, C4 in 22 %, C6 in 8 % of 23 nerves; it pierces scalenus medius in 74 % and reaches levator in about half (Nguyen 2016).</source>
      <translation>Wurzel C5 bei etwa 70 %, C4 bei 22 %, C6 bei 8 % von 23 Nerven; er durchbohrt in 74 % den M. scalenus medius und erreicht in etwa der Hälfte den M. levator scapulae (Nguyen 2016).</translation>
    </message>
    <message>
      <source>From the posterior cord, down the back wall of the axilla with its artery, to the deep face of latissimus near its outer edge, about 6 cm from the inferior angle of the scapula.</source>
      <translation>Aus dem Fasciculus posterior, mit seiner Arterie an der Hinterwand der Achselhöhle abwärts zur Unterseite des M. latissimus dorsi nahe dessen Außenrand, etwa 6 cm vom Angulus inferior der Scapula.</translation>
    </message>
    <message>
      <source>Found on the armpit side, not near the spine: do not strip the outer border.</source>
      <translation>Von der Achsel her zu finden, nicht an den Dornfortsätzen: Den Außenrand nicht freischälen.</translation>
    </message>
    <message>
      <source>From the upper trunk, under trapezius to the notch of the scapula, under its ligament into the supraspinous fossa, and round the neck of the spine to the infraspinous fossa.</source>
      <translation>Aus dem Truncus superior, unter dem M. trapezius zur Incisura scapulae, unter deren Band in die Fossa supraspinata und um den Hals der Spina scapulae in die Fossa infraspinata.</translation>
    </message>
    <message>
      <source>The nerve goes under the ligament of the notch, the artery over it.</source>
      <translation>Der Nerv zieht unter dem Band der Incisura hindurch, die Arterie darüber.</translation>
    </message>
    <message>
      <source>From the posterior cord, through the quadrangular space, round the surgical neck of the humerus under deltoid.</source>
      <translation>Aus dem Fasciculus posterior durch die laterale Achsellücke um das Collum chirurgicum des Humerus unter den M. deltoideus.</translation>
    </message>
    <message>
      <source>Edge of the field: it comes to the back between the teres muscles, lateral to the long head of triceps.</source>
      <translation>Am Rand des Präparats: Er kommt zwischen den Mm. teretes nach hinten, lateral vom Caput longum des M. triceps.</translation>
    </message>
    <message>
      <source>From the roots, through and behind the scalenes, down the outer face of serratus anterior.</source>
      <translation>Aus den Wurzeln, durch und hinter den Mm. scaleni, auf der Außenfläche des M. serratus anterior abwärts.</translation>
    </message>
    <message>
      <source>Not met from behind: it runs on the far face of serratus anterior.</source>
      <translation>Von hinten nicht anzutreffen: Er läuft auf der abgewandten Seite des M. serratus anterior.</translation>
    </message>
    <message>
      <source>Medial branch of the posterior ramus of C2: curls under obliquus capitis inferior, climbs between it and semispinalis capitis, pierces semispinalis, then trapezius or its edge, and joins the occipital artery in the scalp.</source>
      <translation>Ramus medialis des Ramus posterior von C2: schlingt sich um den Unterrand des M. obliquus capitis inferior, steigt zwischen diesem und dem M. semispinalis capitis auf, durchbohrt den M. semispinalis, dann den M. trapezius oder dessen Rand, und erreicht in der Kopfhaut die A. occipitalis.</translation>
    </message>
    <message>
      <source>Met three times: in the fat, through semispinalis, and under obliquus capitis inferior.</source>
      <translation>Man trifft ihn dreimal: im Fett, im M. semispinalis und unter dem M. obliquus capitis inferior.</translation>
    </message>
    <message>
      <source>It pierces trapezius in about 45 % and semispinalis in about 90 % of sides.</source>
      <translation>Er durchbohrt den M. trapezius auf etwa 45 %, den M. semispinalis auf etwa 90 % der Seiten.</translation>
    </message>
    <message>
      <source>Medial branch of the posterior ramus of C3: between semispinalis cervicis and capitis, through semispinalis, splenius and trapezius close to the midline, medial to the greater occipital nerve.</source>
      <translation>Ramus medialis des Ramus posterior von C3: zwischen Mm. semispinales cervicis und capitis, durch M. semispinalis, M. splenius und M. trapezius nahe der Mittellinie, medial vom N. occipitalis major.</translation>
    </message>
    <message>
      <source>Small and close to the midline: usually cut with trapezius; accept it.</source>
      <translation>Klein und nahe der Mittellinie: meist mit dem M. trapezius durchtrennt; das ist hinzunehmen.</translation>
    </message>
    <message>
      <source>Posterior ramus of C1: between the vertebral artery and the posterior arch of the atlas into the suboccipital triangle, to the four muscles round it and to semispinalis capitis.</source>
      <translation>Ramus posterior von C1: zwischen A. vertebralis und Arcus posterior des Atlas in das Trigonum suboccipitale, zu den vier Muskeln ringsum und zum M. semispinalis capitis.</translation>
    </message>
    <message>
      <source>It comes out inside the triangle, above the arch and below the artery; it has no regular skin branch.</source>
      <translation>Er tritt im Dreieck aus, über dem Atlasbogen und unter der Arterie; einen regelmäßigen Hautast hat er nicht.</translation>
    </message>
    <message>
      <source>Turns round the back edge of sternocleidomastoid and climbs along it to the scalp behind the ear.</source>
      <translation>Biegt um den Hinterrand des M. sternocleidomastoideus und steigt an ihm entlang zur Kopfhaut hinter dem Ohr.</translation>
    </message>
    <message>
      <source>From the anterior rami: it marks the edge of the back's territory.</source>
      <translation>Aus den Rami anteriores: Er bezeichnet die Grenze des Rückengebiets.</translation>
    </message>
    <message>
      <source>Turns round the back edge of sternocleidomastoid and crosses its outer face towards the ear.</source>
      <translation>Biegt um den Hinterrand des M. sternocleidomastoideus und kreuzt dessen Außenfläche zum Ohr hin.</translation>
    </message>
    <message>
      <source>Edge of the field: it crosses sternocleidomastoid, the lesser occipital follows its back edge.</source>
      <translation>Am Rand des Präparats: Er kreuzt den M. sternocleidomastoideus, der N. occipitalis minor folgt dessen Hinterrand.</translation>
    </message>
    <message>
      <source>From the union of the two roots through the intervertebral foramen, where it divides into posterior and anterior ramus.</source>
      <translation>Aus der Vereinigung der beiden Wurzeln durch das Foramen intervertebrale, wo er sich in Ramus posterior und Ramus anterior teilt.</translation>
    </message>
    <message>
      <source>In the neck a nerve leaves above the vertebra of its number, C8 below C7, and from T1 down below its own vertebra.</source>
      <translation>Am Hals tritt ein Nerv über dem Wirbel seiner Nummer aus, C8 unter C7, ab T1 unter dem eigenen Wirbel.</translation>
    </message>
    <message>
      <source>On the posterior root, in the intervertebral foramen; that of C2 behind the joint, those of the sacral nerves inside the canal.</source>
      <translation>An der hinteren Wurzel, im Foramen intervertebrale; das von C2 hinter dem Gelenk, die der Sakralnerven im Kanal.</translation>
    </message>
    <message>
      <source>It sits in the foramen, so it is seen only after the facet is taken.</source>
      <translation>Es sitzt im Foramen, deshalb sieht man es erst, wenn der Gelenkfortsatz entfernt ist.</translation>
    </message>
    <message>
      <source>From the cord to the foramen, steeper the lower they lie.</source>
      <translation>Vom Rückenmark zum Foramen, je tiefer, desto steiler.</translation>
    </message>
    <message>
      <source>Lower down the roots run further inside the canal before they leave it.</source>
      <translation>Weiter unten laufen die Wurzeln länger im Kanal, bevor sie ihn verlassen.</translation>
    </message>
    <message>
      <source>Turns back at the intervertebral foramen, medial to the superior costotransverse ligament, and splits into a medial and a lateral branch.</source>
      <translation>Wendet sich am Foramen intervertebrale nach hinten, medial vom Lig. costotransversarium superius, und teilt sich in einen Ramus medialis und einen Ramus lateralis.</translation>
    </message>
    <message>
      <source>The test of a true back muscle is its nerve, not its place.</source>
      <translation>Den autochthonen Rückenmuskel erkennt man an seinem Nerv, nicht an seiner Lage.</translation>
    </message>
    <message>
      <source>Hugs the vertebra to multifidus and the spines; reaches the skin near the midline from T1 to about T6.</source>
      <translation>Läuft dicht am Wirbel zu M. multifidus und Dornfortsätzen; von T1 bis etwa T6 erreicht er nahe der Mittellinie die Haut.</translation>
    </message>
    <message>
      <source>Above mid-chest this is the branch that reaches the skin.</source>
      <translation>Oberhalb der Brustmitte ist dies der Ast, der die Haut erreicht.</translation>
    </message>
    <message>
      <source>Runs back and out into the groove between longissimus and iliocostalis; reaches the skin from about T7 to L3.</source>
      <translation>Läuft nach hinten außen in die Rinne zwischen M. longissimus und M. iliocostalis; von etwa T7 bis L3 erreicht er die Haut.</translation>
    </message>
    <message>
      <source>Find one by parting the two columns with a finger: it runs straight up at you.</source>
      <translation>Man findet einen, wenn man die beiden Säulen mit dem Finger trennt: Er kommt einem gerade entgegen.</translation>
    </message>
    <message>
      <source>Pierce trapezius near the midline (down to about T6) or latissimus further out (below), then run outward in the superficial fascia.</source>
      <translation>Durchbohren den M. trapezius nahe der Mittellinie (bis etwa T6 hinab) oder weiter außen den M. latissimus dorsi (darunter) und laufen dann in der oberflächlichen Faszie nach außen.</translation>
    </message>
    <message>
      <source>Keep two or three a side as samples: more costs the lab its time. C1 and usually C6 to C8, L4 and L5 have no skin branch.</source>
      <translation>Zwei oder drei je Seite als Proben erhalten: Mehr kostet den Kurs zu viel Zeit. C1 und meist C6 bis C8, L4 und L5 haben keinen Hautast.</translation>
    </message>
    <message>
      <source>Lateral branches of L1 to L3: pierce the fascia just above the iliac crest, 6 to 8 cm from the midline, and cross the crest to the skin of the buttock.</source>
      <translation>Rami laterales von L1 bis L3: durchbohren die Faszie knapp über der Crista iliaca, 6 bis 8 cm neben der Mittellinie, und ziehen über die Crista zur Gesäßhaut.</translation>
    </message>
    <message>
      <source>They cross the lowest transverse cut: make that cut through skin only.</source>
      <translation>Sie kreuzen den untersten Querschnitt: Dort nur durch die Haut schneiden.</translation>
    </message>
    <message>
      <source>Lateral branches of S1 to S3: come out over the posterior sacral foramina to the skin beside the sacrum.</source>
      <translation>Rami laterales von S1 bis S3: treten über den Foramina sacralia posteriora zur Haut neben dem Sacrum.</translation>
    </message>
    <message>
      <source>Rarely kept: name them as optional.</source>
      <translation>Selten erhalten: als entbehrlich benennen.</translation>
    </message>
    <message>
      <source>Anterior ramus: forward between the ribs, in the groove under the upper one, below vein and artery.</source>
      <translation>Ramus anterior: zwischen den Rippen nach vorn, in der Rinne unter der oberen, unterhalb von Vene und Arterie.</translation>
    </message>
    <message>
      <source>Bigger than the posterior ramus; the serrati belong to it, which is why they are not true back muscles.</source>
      <translation>Dicker als der Ramus posterior; die Mm. serrati gehören zu ihm, deshalb sind sie keine autochthonen Rückenmuskeln.</translation>
    </message>
    <message>
      <source>Anterior ramus of T12: below rib 12, in front of quadratus lumborum, to the wall of the belly.</source>
      <translation>Ramus anterior von T12: unter der 12. Rippe, vor dem M. quadratus lumborum, zur Bauchwand.</translation>
    </message>
    <message>
      <source>In the section it lies in front of quadratus lumborum, not behind.</source>
      <translation>Im Schnitt liegt er vor dem M. quadratus lumborum, nicht dahinter.</translation>
    </message>
    <message>
      <source>Short threads between spinal nerve and sympathetic ganglion; white ones from T1 to L2, grey ones at every level.</source>
      <translation>Kurze Fäden zwischen Spinalnerv und Ganglion des Grenzstrangs; weiße von T1 bis L2, graue in jeder Höhe.</translation>
    </message>
    <message>
      <source>They belong to the picture of a typical spinal nerve and are shown in section.</source>
      <translation>Sie gehören zum Bild eines typischen Spinalnervs und werden im Schnitt gezeigt.</translation>
    </message>
    <message>
      <source>Beside the vertebral bodies: on the heads of the ribs in the chest, on the fronts of the bodies in the loin.</source>
      <translation>Neben den Wirbelkörpern: an der Brust auf den Rippenköpfen, an der Lende auf der Vorderseite der Wirbelkörper.</translation>
    </message>
    <message>
      <source>Never seen from behind in this lab: show it in section.</source>
      <translation>In diesem Kurs von hinten nie zu sehen: im Schnitt zeigen.</translation>
    </message>
    <message>
      <source>Swellings on the trunk, about one a level.</source>
      <translation>Anschwellungen des Grenzstrangs, etwa eine je Höhe.</translation>
    </message>
    <message>
      <source>About one a level; neighbours may be fused.</source>
      <translation>Etwa eines je Höhe; benachbarte können verschmolzen sein.</translation>
    </message>
    <message>
      <source>In a groove medial to the mastoid process, under splenius and sternocleidomastoid, then into the scalp between trapezius and sternocleidomastoid.</source>
      <translation>In einer Rinne medial vom Proc. mastoideus, unter M. splenius und M. sternocleidomastoideus, dann zwischen M. trapezius und M. sternocleidomastoideus in die Kopfhaut.</translation>
    </message>
    <message>
      <source>Usually lateral to the greater occipital nerve at the superior nuchal line.</source>
      <translation>An der Linea nuchalis superior meist lateral vom N. occipitalis major.</translation>
    </message>
    <message>
      <source>Across the posterior triangle to the deep face of trapezius, where it runs with the accessory nerve.</source>
      <translation>Durch das seitliche Halsdreieck zur Unterseite des M. trapezius, wo er mit dem N. accessorius läuft.</translation>
    </message>
    <message>
      <source>Kept as one bundle with the accessory nerve on the folded muscle.</source>
      <translation>Als ein Bündel mit dem N. accessorius am umgeklappten Muskel erhalten.</translation>
    </message>
    <message>
      <source>Along the medial border of the scapula with the dorsal scapular nerve, deep to levator scapulae and the rhomboids.</source>
      <translation>Mit dem N. dorsalis scapulae am Margo medialis der Scapula entlang, unter M. levator scapulae und Mm. rhomboidei.</translation>
    </message>
    <message>
      <source>Two origins are both common: trace it before naming.</source>
      <translation>Zwei Abgänge sind beide häufig: Verfolgen Sie sie, bevor Sie sie benennen.</translation>
    </message>
    <message>
      <source>Origin differs: straight from the subclavian artery or as the deep branch of the transverse cervical (Gray's descending branch).</source>
      <translation>Der Abgang wechselt: unmittelbar aus der A. subclavia oder als tiefer Ast der A. transversa cervicis (Ramus descendens nach Gray).</translation>
    </message>
    <message>
      <source>Beside the artery of the same name, to the subclavian or external jugular vein.</source>
      <translation>Neben der gleichnamigen Arterie, zur V. subclavia oder V. jugularis externa.</translation>
    </message>
    <message>
      <source>Veins may be taken to clear the view of nerve and artery.</source>
      <translation>Venen dürfen entfernt werden, um Nerv und Arterie freizulegen.</translation>
    </message>
    <message>
      <source>Behind the clavicle, over the ligament of the scapular notch, into the supraspinous and then the infraspinous fossa.</source>
      <translation>Hinter der Clavicula, über das Band der Incisura scapulae in die Fossa supraspinata und dann in die Fossa infraspinata.</translation>
    </message>
    <message>
      <source>Seen at the upper edge when trapezius is fully folded; the nerve goes under the ligament.</source>
      <translation>Am Oberrand zu sehen, wenn der M. trapezius ganz umgeklappt ist; der Nerv zieht unter dem Band hindurch.</translation>
    </message>
    <message>
      <source>Down the lateral border of the scapula; divides into circumflex scapular and thoracodorsal arteries.</source>
      <translation>Am Margo lateralis der Scapula abwärts; teilt sich in A. circumflexa scapulae und A. thoracodorsalis.</translation>
    </message>
    <message>
      <source>The stem that connects what is seen from the back to the armpit.</source>
      <translation>Der Stamm, der das von hinten Sichtbare mit der Achselhöhle verbindet.</translation>
    </message>
    <message>
      <source>Through the triangular space, round the lateral border of the scapula, into the infraspinous fossa.</source>
      <translation>Durch die mediale Achsellücke um den Margo lateralis der Scapula in die Fossa infraspinata.</translation>
    </message>
    <message>
      <source>Third arm of the ring of arteries round the scapula; an optional find.</source>
      <translation>Der dritte Schenkel des Arterienrings um die Scapula; kann, muss aber nicht gefunden werden.</translation>
    </message>
    <message>
      <source>With its nerve to the deep face of latissimus, about 6 cm from the inferior angle of the scapula; a branch to serratus anterior.</source>
      <translation>Mit ihrem Nerv zur Unterseite des M. latissimus dorsi, etwa 6 cm vom Angulus inferior der Scapula; ein Ast zum M. serratus anterior.</translation>
    </message>
    <message>
      <source>It enters well out to the side: the fold leaves it in place.</source>
      <translation>Sie tritt weit außen ein: Das Umklappen lässt sie an ihrem Ort.</translation>
    </message>
    <message>
      <source>Backward between the transverse process of C7 and the first rib, then up between semispinalis capitis and cervicis.</source>
      <translation>Nach hinten zwischen Querfortsatz von C7 und 1. Rippe, dann zwischen Mm. semispinales capitis und cervicis aufwärts.</translation>
    </message>
    <message>
      <source>A marker of plane: it lies exactly between the two semispinales.</source>
      <translation>Wegweiser der Schicht: Sie liegt genau zwischen den beiden Mm. semispinales.</translation>
    </message>
    <message>
      <source>Up through the transverse foramina from C6, behind the lateral mass of the atlas in its groove on the posterior arch, and through the posterior atlanto-occipital membrane to the foramen magnum.</source>
      <translation>Ab C6 durch die Foramina transversaria aufwärts, hinter der Massa lateralis des Atlas in ihrer Rinne auf dem Arcus posterior und durch die Membrana atlantooccipitalis posterior zum Foramen magnum.</translation>
    </message>
    <message>
      <source>It lies on bone in the floor of the suboccipital triangle, in a nest of veins.</source>
      <translation>Sie liegt am Boden des Trigonum suboccipitale auf dem Knochen, in einem Geflecht von Venen.</translation>
    </message>
    <message>
      <source>Round the body of the vertebra and forward under the rib above, between vein and nerve; a dorsal branch goes back with the posterior ramus.</source>
      <translation>Um den Wirbelkörper und unter der oberen Rippe nach vorn, zwischen Vene und Nerv; ein Ramus dorsalis geht mit dem Ramus posterior nach hinten.</translation>
    </message>
    <message>
      <source>Each dorsal branch gives a spinal branch: the supply of the cord starts here.</source>
      <translation>Jeder Ramus dorsalis gibt einen Ramus spinalis ab: Hier beginnt die Versorgung des Rückenmarks.</translation>
    </message>
    <message>
      <source>Below rib 12 with its nerve, in front of quadratus lumborum.</source>
      <translation>Unter der 12. Rippe mit ihrem Nerv, vor dem M. quadratus lumborum.</translation>
    </message>
    <message>
      <source>Lowest of the series; no rib lies below it.</source>
      <translation>Die unterste der Reihe; unter ihr liegt keine Rippe.</translation>
    </message>
    <message>
      <source>Round the bodies of L1 to L4 behind psoas; a dorsal branch goes back with the posterior ramus.</source>
      <translation>Um die Wirbelkörper von L1 bis L4, hinter dem M. psoas; ein Ramus dorsalis geht mit dem Ramus posterior nach hinten.</translation>
    </message>
    <message>
      <source>Fixed blood in the muscle near a facet marks the dorsal branch.</source>
      <translation>Fixiertes Blut im Muskel nahe einem Wirbelgelenk bezeichnet den Ramus dorsalis.</translation>
    </message>
    <message>
      <source>In and over the suboccipital triangle; drains to the vertebral and deep cervical veins.</source>
      <translation>Im und auf dem Trigonum suboccipitale; fließt in V. vertebralis und V. cervicalis profunda ab.</translation>
    </message>
    <message>
      <source>Dark clot that hides nerve and artery: lift it piece by piece.</source>
      <translation>Dunkles Gerinnsel, das Nerv und Arterie verbirgt: stückweise herausheben.</translation>
    </message>
    <message>
      <source>In front and to the left of the bodies from T4 to its division at L4.</source>
      <translation>Vor und links der Wirbelkörper von T4 bis zur Teilung bei L4.</translation>
    </message>
    <message>
      <source>Context only: it tells front from back in a section, and left from right.</source>
      <translation>Nur zur Orientierung: Sie zeigt im Schnitt vorn und hinten, links und rechts.</translation>
    </message>
    <message>
      <source>In front and to the right of the bodies from about L1 to T4, where it arches over the root of the lung.</source>
      <translation>Vor und rechts der Wirbelkörper von etwa L1 bis T4, wo sie sich über die Lungenwurzel biegt.</translation>
    </message>
    <message>
      <source>Context only: on the right, where the aorta is on the left.</source>
      <translation>Nur zur Orientierung: rechts, wo die Aorta links liegt.</translation>
    </message>
    <message>
      <source>Foramen magnum to about L1 or L2, with swellings for arm and leg.</source>
      <translation>Vom Foramen magnum bis etwa L1 oder L2, mit Anschwellungen für Arm und Bein.</translation>
    </message>
    <message>
      <source>Segments of the cord lie higher than the vertebrae of the same number, and more so lower down.</source>
      <translation>Die Rückenmarksegmente liegen höher als die gleichnamigen Wirbel, nach unten zunehmend.</translation>
    </message>
    <message>
      <source>Tapered end of the cord: on average the lower third of L1, from T12 to L3.</source>
      <translation>Zugespitztes Ende des Rückenmarks: im Mittel unteres Drittel von L1, von T12 bis L3.</translation>
    </message>
    <message>
      <source>A range, not a point.</source>
      <translation>Ein Bereich, kein Punkt.</translation>
    </message>
    <message>
      <source>Roots of L2 and below, from the conus to their foramina.</source>
      <translation>Wurzeln von L2 abwärts, vom Conus medullaris zu ihren Foramina.</translation>
    </message>
    <message>
      <source>Roots leave below the pedicle of their own number.</source>
      <translation>Die Wurzeln treten unter dem Pediculus ihrer eigenen Nummer aus.</translation>
    </message>
    <message>
      <source>From the conus to the coccyx; its lower part ensheathed by the end of the dura.</source>
      <translation>Vom Conus medullaris zum Os coccygis; im unteren Teil vom Ende der Dura umhüllt.</translation>
    </message>
    <message>
      <source>A single midline silver thread among the roots.</source>
      <translation>Ein einzelner silbriger Faden in der Mitte zwischen den Wurzeln.</translation>
    </message>
    <message>
      <source>From the foramen magnum to about S2.</source>
      <translation>Vom Foramen magnum bis etwa S2.</translation>
    </message>
    <message>
      <source>Open it in the midline and pin the edges, so that the arachnoid shows.</source>
      <translation>In der Mittellinie eröffnen und die Ränder feststecken, sodass die Arachnoidea sichtbar wird.</translation>
    </message>
    <message>
      <source>Against the inner face of the dura, to S2.</source>
      <translation>Der Innenfläche der Dura angelagert, bis S2.</translation>
    </message>
    <message>
      <source>A cobweb that lies against the dura, with no gap.</source>
      <translation>Ein Spinnweb, das ohne Spalt an der Dura liegt.</translation>
    </message>
    <message>
      <source>From the side of the cord to the dura between the roots, by about 21 teeth.</source>
      <translation>Seitlich vom Rückenmark zwischen den Wurzeln zur Dura, mit etwa 21 Zacken.</translation>
    </message>
    <message>
      <source>It stands between front and back roots and so tells which is which.</source>
      <translation>Es steht zwischen vorderen und hinteren Wurzeln und zeigt so, welche welche sind.</translation>
    </message>
    <message>
      <source>Between ligamenta flava and laminae behind and the dura in front.</source>
      <translation>Zwischen Ligg. flava und Laminae hinten und der Dura vorn.</translation>
    </message>
    <message>
      <source>A real space with fat, unlike that round the brain.</source>
      <translation>Ein wirklicher Raum mit Fett, anders als am Gehirn.</translation>
    </message>
    <message>
      <source>In the epidural fat, the whole length of the canal; through the foramina to the external plexus.</source>
      <translation>Im epiduralen Fett, über die ganze Länge des Kanals; durch die Foramina zum Plexus externus.</translation>
    </message>
    <message>
      <source>Valveless: it explains spread between pelvis, spine and head.</source>
      <translation>Klappenlos: Das erklärt die Ausbreitung zwischen Becken, Wirbelsäule und Kopf.</translation>
    </message>
    <message>
      <source>posterior rami: medial branches above about T6, lateral branches below</source>
      <translation>Rami posteriores: oberhalb von etwa T6 die Rami mediales, darunter die Rami laterales</translation>
    </message>
    <message>
      <source>dorsal branches of posterior intercostal and lumbar arteries</source>
      <translation>Rami dorsales der Aa. intercostales posteriores und Aa. lumbales</translation>
    </message>
    <message>
      <source>Thick over nape and shoulders; you are through it when the edges gape and yellow fat shows, and no deeper.</source>
      <translation>Dick über Nacken und Schultern; man ist durch, wenn die Ränder klaffen und gelbes Fett erscheint, nicht tiefer.</translation>
    </message>
    <message>
      <source>A plain stand-in that closes the body in front; it shows nothing of the organs.</source>
      <translation>Ein schlichter Platzhalter, der den Körper vorn schließt; von den Organen zeigt er nichts.</translation>
    </message>
    <message>
      <source>It opens when the scapula is drawn forward: test it by moving the arm.</source>
      <translation>Es öffnet sich, wenn die Scapula nach vorn gezogen wird: Prüfen Sie es, indem Sie den Arm bewegen.</translation>
    </message>
    <message>
      <source>outer edge of trapezius, above and medial</source>
      <translation>Außenrand des M. trapezius, oben und medial</translation>
    </message>
    <message>
      <source>upper edge of latissimus dorsi, below</source>
      <translation>Oberrand des M. latissimus dorsi, unten</translation>
    </message>
    <message>
      <source>medial border of the scapula, lateral</source>
      <translation>Margo medialis der Scapula, lateral</translation>
    </message>
    <message>
      <source>May be missing when the two muscles meet: say absent, not failed.</source>
      <translation>Kann fehlen, wenn sich die beiden Muskeln berühren: Dann heißt es „nicht vorhanden“, nicht „nicht gefunden“.</translation>
    </message>
    <message>
      <source>outer edge of latissimus dorsi</source>
      <translation>Außenrand des M. latissimus dorsi</translation>
    </message>
    <message>
      <source>back edge of external oblique</source>
      <translation>Hinterrand des M. obliquus externus abdominis</translation>
    </message>
    <message>
      <source>Seen only after latissimus is folded.</source>
      <translation>Erst zu sehen, wenn der M. latissimus dorsi umgeklappt ist.</translation>
    </message>
    <message>
      <source>rib 12 and serratus posterior inferior, above</source>
      <translation>12. Rippe und M. serratus posterior inferior, oben</translation>
    </message>
    <message>
      <source>lateral edge of erector spinae</source>
      <translation>Seitenrand des M. erector spinae</translation>
    </message>
    <message>
      <source>back edge of internal oblique</source>
      <translation>Hinterrand des M. obliquus internus abdominis</translation>
    </message>
    <message>
      <source>Three named sides, two named contents, one named floor; rectus capitis posterior minor is not a side of it.</source>
      <translation>Drei benannte Seiten, zwei benannte Inhalte, ein benannter Boden; der M. rectus capitis posterior minor ist keine Seite.</translation>
    </message>
    <message>
      <source>rectus capitis posterior major, above and medial</source>
      <translation>M. rectus capitis posterior major, oben und medial</translation>
    </message>
    <message>
      <source>obliquus capitis superior, above and lateral</source>
      <translation>M. obliquus capitis superior, oben und lateral</translation>
    </message>
    <message>
      <source>obliquus capitis inferior, below and lateral</source>
      <translation>M. obliquus capitis inferior, unten und lateral</translation>
    </message>
    <message>
      <source>The axillary nerve and the posterior circumflex humeral artery come through it to the back.</source>
      <translation>N. axillaris und A. circumflexa humeri posterior kommen durch sie nach hinten.</translation>
    </message>
    <message>
      <source>teres minor, above</source>
      <translation>M. teres minor, oben</translation>
    </message>
    <message>
      <source>humerus, lateral</source>
      <translation>Humerus, lateral</translation>
    </message>
    <message>
      <source>teres major, below</source>
      <translation>M. teres major, unten</translation>
    </message>
    <message>
      <source>long head of triceps, medial</source>
      <translation>Caput longum des M. triceps, medial</translation>
    </message>
    <message>
      <source>The circumflex scapular artery turns through it to the infraspinous fossa.</source>
      <translation>Die A. circumflexa scapulae biegt durch sie in die Fossa infraspinata.</translation>
    </message>
    <message>
      <source>long head of triceps, lateral</source>
      <translation>Caput longum des M. triceps, lateral</translation>
    </message>
    <message>
      <source>Leave its fascia closed in a back lab: the neck team will need it.</source>
      <translation>Lassen Sie seine Faszie im Rückenkurs geschlossen: Die Gruppe am Hals braucht sie noch.</translation>
    </message>
    <message>
      <source>back edge of sternocleidomastoid</source>
      <translation>Hinterrand des M. sternocleidomastoideus</translation>
    </message>
    <message>
      <source>front edge of trapezius</source>
      <translation>Vorderrand des M. trapezius</translation>
    </message>
    <message>
      <source>middle third of the clavicle</source>
      <translation>mittleres Drittel der Clavicula</translation>
    </message>
    <message>
      <source>Clean it to bone and the lines of the laminectomy are set.</source>
      <translation>Bis auf den Knochen gesäubert, liegen die Linien der Laminektomie fest.</translation>
    </message>
    <message>
      <source>spinous processes, medial</source>
      <translation>Dornfortsätze, medial</translation>
    </message>
    <message>
      <source>transverse processes, lateral</source>
      <translation>Querfortsätze, lateral</translation>
    </message>
    <message>
      <source>laminae, floor</source>
      <translation>Laminae, Boden</translation>
    </message>
    <message>
      <source>A line of fat in the loin, felt before it is seen; the lateral branches run up in it.</source>
      <translation>In der Lende ein Fettstreifen, den man eher tastet als sieht; die Rami laterales steigen in ihm auf.</translation>
    </message>
    <message>
      <source>longissimus, medial</source>
      <translation>M. longissimus, medial</translation>
    </message>
    <message>
      <source>iliocostalis, lateral</source>
      <translation>M. iliocostalis, lateral</translation>
    </message>
    <message>
      <source>One muscle with three pulls; upper and lower parts together turn the glenoid cavity up.</source>
      <translation>Ein Muskel mit drei Zugrichtungen; oberer und unterer Teil drehen zusammen die Cavitas glenoidalis nach oben.</translation>
    </message>
    <message>
      <source>Told apart by their attachments, not by a gap.</source>
      <translation>Durch ihre Ansätze zu unterscheiden, nicht durch eine Lücke.</translation>
    </message>
    <message>
      <source>Two closing shutters with an empty gap between.</source>
      <translation>Zwei schließende Läden mit einer leeren Lücke dazwischen.</translation>
    </message>
    <message>
      <source>Deep by their nerve (posterior rami), but not erector spinae.</source>
      <translation>Dem Nerv nach (Rami posteriores) tiefe Muskeln, aber nicht M. erector spinae.</translation>
    </message>
    <message>
      <source>Three columns, from medial to lateral spinalis, longissimus, iliocostalis; name a column by where it ends: spine, transverse process, rib.</source>
      <translation>Drei Säulen, von medial nach lateral M. spinalis, M. longissimus, M. iliocostalis; benennen Sie eine Säule nach ihrem Ende: Dornfortsatz, Querfortsatz, Rippe.</translation>
    </message>
    <message>
      <source>The outermost column, in relays.</source>
      <translation>Die äußerste Säule, in Staffeln.</translation>
    </message>
    <message>
      <source>The middle and largest column; the only one to reach the skull.</source>
      <translation>Die mittlere und größte Säule; die einzige, die den Schädel erreicht.</translation>
    </message>
    <message>
      <source>From spine to spine; its head part is the inner edge of semispinalis capitis.</source>
      <translation>Von Dornfortsatz zu Dornfortsatz; ihr Kopfteil ist der Innenrand des M. semispinalis capitis.</translation>
    </message>
    <message>
      <source>The longest reach of the slanting group.</source>
      <translation>Die längsten Züge des schrägen Systems.</translation>
    </message>
    <message>
      <source>Its bulk is lumbar; each slip spans two to four levels, up and medially.</source>
      <translation>Die Hauptmasse liegt in der Lende; jede Zacke überspannt zwei bis vier Wirbel, aufwärts nach medial.</translation>
    </message>
    <message>
      <source>Short ones go one level, long ones two.</source>
      <translation>Die kurzen überbrücken einen Zwischenwirbelraum, die langen zwei.</translation>
    </message>
    <message>
      <source>From transverse process up and medially to spine; the deeper, the shorter.</source>
      <translation>Vom Querfortsatz aufwärts nach medial zum Dornfortsatz; je tiefer, desto kürzer.</translation>
    </message>
    <message>
      <source>Neck and loin only.</source>
      <translation>Nur an Hals und Lende.</translation>
    </message>
    <message>
      <source>Mixed nerve supply: not all are true back muscles.</source>
      <translation>Gemischte Innervation: Nicht alle sind autochthone Rückenmuskeln.</translation>
    </message>
    <message>
      <source>Little fans on the backs of the ribs; sources disagree on the nerve.</source>
      <translation>Kleine Fächer auf der Rückseite der Rippen; über den Nerv sind die Quellen uneins.</translation>
    </message>
    <message>
      <source>Four muscles, one nerve; three of them make the triangle.</source>
      <translation>Vier Muskeln, ein Nerv; drei von ihnen bilden das Dreieck.</translation>
    </message>
    <message>
      <source>Neighbours at the edge: seen, named, never folded in this lab.</source>
      <translation>Nachbarn am Rand: gesehen, benannt, in diesem Kurs nie umgeklappt.</translation>
    </message>
    <message>
      <source>Context at the side of the neck.</source>
      <translation>Zur Orientierung an der Halsseite.</translation>
    </message>
    <message>
      <source>Two layers round erector spinae, joined at the lateral raphe; a third, in front of quadratus lumborum, is not modelled.</source>
      <translation>Zwei Blätter um den M. erector spinae, an der lateralen Raphe vereinigt; ein drittes, vor dem M. quadratus lumborum, ist nicht modelliert.</translation>
    </message>
    <message>
      <source>The tip of a mid-thoracic spine lies one level below its own body.</source>
      <translation>Die Spitze eines mittleren Brustdornfortsatzes liegt einen Wirbel tiefer als sein eigener Körper.</translation>
    </message>
    <message>
      <source>The line of the angles is the border between deep back and side wall.</source>
      <translation>Die Linie der Anguli costarum ist die Grenze zwischen tiefem Rücken und Seitenwand.</translation>
    </message>
    <message>
      <source>They move the shoulder and the arm and are supplied from the front (accessory nerve, anterior rami).</source>
      <translation>Sie bewegen Schulter und Arm und werden von vorn versorgt (N. accessorius, Rami anteriores).</translation>
    </message>
    <message>
      <source>tip of the spinous process of {level}</source>
      <translation>Spitze des Dornfortsatzes von {level}</translation>
    </message>
    <message>
      <source>median sacral crest at {level}</source>
      <translation>Crista sacralis mediana bei {level}</translation>
    </message>
    <message>
      <source>tip of the coccyx</source>
      <translation>Spitze des Os coccygis</translation>
    </message>
    <message>
      <source>inferior angle of the scapula</source>
      <translation>Angulus inferior der Scapula</translation>
    </message>
    <message>
      <source>root of the scapular spine</source>
      <translation>Wurzel der Spina scapulae</translation>
    </message>
    <message>
      <source>tip of the acromion</source>
      <translation>Spitze des Acromions</translation>
    </message>
    <message>
      <source>acromial angle</source>
      <translation>Angulus acromii</translation>
    </message>
    <message>
      <source>medial border of the scapula</source>
      <translation>Margo medialis der Scapula</translation>
    </message>
    <message>
      <source>sternal end of the clavicle</source>
      <translation>Extremitas sternalis der Clavicula</translation>
    </message>
    <message>
      <source>acromial end of the clavicle</source>
      <translation>Extremitas acromialis der Clavicula</translation>
    </message>
    <message>
      <source>iliac crest, outer lip</source>
      <translation>Crista iliaca, Labium externum</translation>
    </message>
    <message>
      <source>highest point of the iliac crest</source>
      <translation>höchster Punkt der Crista iliaca</translation>
    </message>
    <message>
      <source>anterior superior iliac spine</source>
      <translation>Spina iliaca anterior superior</translation>
    </message>
    <message>
      <source>tip of the mastoid process</source>
      <translation>Spitze des Proc. mastoideus</translation>
    </message>
    <message>
      <source>sternal angle</source>
      <translation>Angulus sterni</translation>
    </message>
    <message>
      <source>greater trochanter</source>
      <translation>Trochanter major</translation>
    </message>
    <message>
      <source>Sharps</source>
      <translation>Scharfes und Spitzes</translation>
    </message>
    <message>
      <source>Blade away from hands, and no hand in the line of cut or pull. Scissors opened in the plane do more than a blade. Blades go on and come off with a holder, never by fingers; they are passed in a tray, counted out, counted in, and thrown into the sharps container.</source>
      <translation>Klinge weg von den Händen, und keine Hand in Schnitt- oder Zugrichtung. Eine in der Schicht gespreizte Schere leistet mehr als eine Klinge. Klingen werden mit dem Halter auf- und abgesetzt, nie mit den Fingern; sie werden in einer Schale gereicht, beim Ausgeben und beim Einsammeln gezählt und in den Abwurfbehälter entsorgt.</translation>
    </message>
    <message>
      <source>Cuts and splashes</source>
      <translation>Schnitte und Spritzer</translation>
    </message>
    <message>
      <source>After any injury stop, wash and rinse long, and report at once; eyes are rinsed for a quarter of an hour.</source>
      <translation>Nach jeder Verletzung aufhören, lange waschen und spülen und sofort melden; Augen werden eine Viertelstunde gespült.</translation>
    </message>
    <message>
      <source>Fixative</source>
      <translation>Fixiermittel</translation>
    </message>
    <message>
      <source>Its vapour irritates eyes, nose and skin, and some fixatives hold formaldehyde, a carcinogen with legal limits that differ by country. Ventilation on, gloves changed when wet through, eye protection; leave when unwell; tell staff early about pregnancy, asthma or allergy.</source>
      <translation>Seine Dämpfe reizen Augen, Nase und Haut; manche Fixiermittel enthalten Formaldehyd, einen krebserzeugenden Stoff, dessen gesetzliche Grenzwerte von Land zu Land verschieden sind. Lüftung an, durchnässte Handschuhe wechseln, Augenschutz; bei Unwohlsein den Saal verlassen; Schwangerschaft, Asthma oder Allergie früh mitteilen.</translation>
    </message>
    <message>
      <source>Gloves, eyes, gown</source>
      <translation>Handschuhe, Augen, Kittel</translation>
    </message>
    <message>
      <source>Gloves, eye protection, gown, closed shoes; no food and no phones at the table; hands washed at the end. Fixed does not mean sterile.</source>
      <translation>Handschuhe, Augenschutz, Kittel, geschlossene Schuhe; am Tisch nichts essen und kein Telefon; am Ende Hände waschen. Fixiert heißt nicht keimfrei.</translation>
    </message>
    <message>
      <source>Bone work</source>
      <translation>Arbeit am Knochen</translation>
    </message>
    <message>
      <source>The canal is opened only under supervision, with eye or face protection and a mask against dust and splashes; saw short of the canal and finish bluntly. Cut edges of bone are sharp: pad them.</source>
      <translation>Der Wirbelkanal wird nur unter Aufsicht eröffnet, mit Augen- oder Gesichtsschutz und Maske gegen Staub und Spritzer; kurz vor dem Kanal mit dem Sägen aufhören und stumpf beenden. Schnittkanten am Knochen sind scharf: abpolstern.</translation>
    </message>
    <message>
      <source>Covered when not worked on; no pictures, names, jokes or trophies; all tissue stays with its donor. Anyone may step out without giving a reason.</source>
      <translation>Bedeckt, solange nicht präpariert wird; keine Bilder, Namen, Witze oder Andenken; alles Gewebe bleibt bei seiner Körperspende. Jeder darf ohne Angabe von Gründen hinausgehen.</translation>
    </message>
    <message>
      <source>Local rules come first</source>
      <translation>Die Hausordnung geht vor</translation>
    </message>
    <message>
      <source>Whatever this plan says, the rules of the room and of its staff come first.</source>
      <translation>Was immer dieser Plan sagt: Die Regeln des Saals und seines Personals gehen vor.</translation>
    </message>
    <message>
      <source>A teaching model</source>
      <translation>Ein Lehrmodell</translation>
    </message>
    <message>
      <source>Made for teaching only: not for needle or surgical guidance, diagnosis or treatment.</source>
      <translation>Nur für die Lehre: nicht für Punktionen, Operationen, Diagnose oder Behandlung.</translation>
    </message>
    <message>
      <source>Feel through the skin, and mark: external occipital protuberance, C7, spine and root of the scapula, acromion, inferior angle, highest point of the iliac crest, posterior superior iliac spine. Count levels from below as well as from above.</source>
      <translation>Durch die Haut tasten und anzeichnen: Protuberantia occipitalis externa, C7, Spina scapulae und ihre Wurzel, Acromion, Angulus inferior, höchster Punkt der Crista iliaca, Spina iliaca posterior superior. Die Höhen von unten wie von oben zählen.</translation>
    </message>
    <message>
      <source>Rules for levels are rules of thumb: write plus or minus one beside each.</source>
      <translation>Höhenregeln sind Faustregeln: Schreiben Sie zu jeder plus/minus eins.</translation>
    </message>
    <message>
      <source>Some mark T3, T7 or T8 and L4; some count up from L5.</source>
      <translation>Manche zeichnen T3, T7 oder T8 und L4 an; manche zählen von L5 aufwärts.</translation>
    </message>
    <message>
      <source>Cut skin only: down the midline, then across at the nuchal line, at the shoulder, at about the inferior angle and along the crest. Lift each flap from the midline outward, blade turned to the skin.</source>
      <translation>Nur die Haut schneiden: in der Mittellinie abwärts, dann quer an der Linea nuchalis, an der Schulter, etwa am Angulus inferior und an der Crista iliaca. Jeden Lappen von der Mittellinie nach außen abheben, die Klinge zur Haut gewandt.</translation>
    </message>
    <message>
      <source>midline edge</source>
      <translation>Rand an der Mittellinie</translation>
    </message>
    <message>
      <source>outward</source>
      <translation>nach außen</translation>
    </message>
    <message>
      <source>Fingers of the free hand behind the blade, never in front; agree who cuts on which side.</source>
      <translation>Finger der freien Hand hinter die Klinge, nie davor; verabreden, wer auf welcher Seite schneidet.</translation>
    </message>
    <message>
      <source>The midline cut ends at sacrum, coccyx, or C7 where the neck is left to another team; the cross cut at the inferior angle may lie at T12 or be left out; flaps stay as covers or come off.</source>
      <translation>Der mediane Schnitt endet am Sacrum, am Os coccygis oder bei C7, wenn der Hals einer anderen Gruppe bleibt; der Querschnitt am Angulus inferior kann bei T12 liegen oder entfallen; die Lappen bleiben als Decke oder werden abgenommen.</translation>
    </message>
    <message>
      <source>midline, from the protuberance to the sacrum</source>
      <translation>Mittellinie, von der Protuberantia bis zum Sacrum</translation>
    </message>
    <message>
      <source>along the superior nuchal line</source>
      <translation>entlang der Linea nuchalis superior</translation>
    </message>
    <message>
      <source>across at the shoulder to the acromion</source>
      <translation>quer an der Schulter bis zum Acromion</translation>
    </message>
    <message>
      <source>across at about the inferior angle, on to the posterior axillary line</source>
      <translation>quer etwa am Angulus inferior, weiter bis zur hinteren Axillarlinie</translation>
    </message>
    <message>
      <source>just above the iliac crest</source>
      <translation>knapp über der Crista iliaca</translation>
    </message>
    <message>
      <source>posterior axillary line</source>
      <translation>hintere Axillarlinie</translation>
    </message>
    <message>
      <source>You are through the skin when its edges gape and yellow fat shows, and no deeper.</source>
      <translation>Die Haut ist durchtrennt, wenn die Ränder klaffen und gelbes Fett erscheint, nicht tiefer.</translation>
    </message>
    <message>
      <source>Over crest and nuchal line nerves lie just under the skin: stay shallow.</source>
      <translation>Über Crista iliaca und Linea nuchalis liegen Nerven dicht unter der Haut: flach bleiben.</translation>
    </message>
    <message>
      <source>Look in the fat for cutaneous branches of posterior rami at one or two levels, and near the nuchal line for greater occipital nerve and occipital artery. Then take the fascia off from the midline outward, down to the sheen of the muscle.</source>
      <translation>Im Fett auf einer oder zwei Höhen nach Hautästen der Rami posteriores suchen, nahe der Linea nuchalis nach N. occipitalis major und A. occipitalis. Dann die Faszie von der Mittellinie nach außen abtragen, bis der Muskel glänzt.</translation>
    </message>
    <message>
      <source>The tissue at the nuchal line is dense: don't linger there.</source>
      <translation>Das Gewebe an der Linea nuchalis ist derb: dort nicht lange aufhalten.</translation>
    </message>
    <message>
      <source>With the skin in one flap (faster, loses the nerves) or as a layer of its own; many courses look for the greater occipital nerve only.</source>
      <translation>Mit der Haut in einem Lappen (schneller, die Nerven gehen verloren) oder als eigene Schicht; viele Kurse suchen nur den N. occipitalis major.</translation>
    </message>
    <message>
      <source>Over the loin stop at white: that white is the fascia you need later.</source>
      <translation>Über der Lende bei Weiß aufhören: Dieses Weiß ist die Faszie, die Sie noch brauchen.</translation>
    </message>
    <message>
      <source>Set a time limit for nerves: a missing thing is reported, not hunted.</source>
      <translation>Für Nerven eine Zeitgrenze setzen: Fehlendes wird gemeldet, nicht gejagt.</translation>
    </message>
    <message>
      <source>Scrape the film off along the fibres; show the borders of trapezius and latissimus, the triangle of auscultation and the inferior lumbar triangle.</source>
      <translation>Das Häutchen entlang der Fasern abschaben; die Ränder von M. trapezius und M. latissimus dorsi, das Trigonum auscultationis und das Trigonum lumbale inferius darstellen.</translation>
    </message>
    <message>
      <source>Along the fibres, never across them.</source>
      <translation>Mit den Fasern, nie quer dazu.</translation>
    </message>
    <message>
      <source>Some leave the film on latissimus.</source>
      <translation>Manche lassen das Häutchen auf dem M. latissimus dorsi.</translation>
    </message>
    <message>
      <source>Do not cross the front edge of trapezius into the neck: the accessory nerve enters there.</source>
      <translation>Den Vorderrand des M. trapezius nicht zum Hals hin überschreiten: Dort tritt der N. accessorius ein.</translation>
    </message>
    <message>
      <source>Loosen it from below with flat fingers. Cut close to the spines from T12 upward and along the medial nuchal line, a finger underneath all the way, and fold it on its attachment to scapula and clavicle.</source>
      <translation>Von unten mit flachen Fingern lösen. Von T12 aufwärts dicht an den Dornfortsätzen und an der medialen Linea nuchalis schneiden, stets mit einem Finger darunter, und auf seinen Ansatz an Scapula und Clavicula umklappen.</translation>
    </message>
    <message>
      <source>medial end: spines, nuchal ligament, nuchal line</source>
      <translation>mediales Ende: Dornfortsätze, Lig. nuchae, Linea nuchalis</translation>
    </message>
    <message>
      <source>Tension on the accessory nerve: lift, do not pull.</source>
      <translation>Zug am N. accessorius: heben, nicht ziehen.</translation>
    </message>
    <message>
      <source>Some courses cut the outer end at clavicle, acromion and scapular spine and fold inward; some do one side each way.</source>
      <translation>Manche Kurse schneiden das äußere Ende an Clavicula, Acromion und Spina scapulae und klappen nach innen; manche machen jede Seite anders.</translation>
    </message>
    <message>
      <source>a finger-width from the spines, T12 to the protuberance</source>
      <translation>einen Fingerbreit neben den Dornfortsätzen, T12 bis zur Protuberantia</translation>
    </message>
    <message>
      <source>outward along the nuchal line for about 2.5 cm</source>
      <translation>entlang der Linea nuchalis etwa 2,5 cm nach außen</translation>
    </message>
    <message>
      <source>lateral third of the clavicle, acromion and scapular spine</source>
      <translation>laterales Drittel der Clavicula, Acromion und Spina scapulae</translation>
    </message>
    <message>
      <source>If slanting fibres stick to the palm side of your fingers, you took the rhomboids too.</source>
      <translation>Haften schräge Fasern an der Hohlhandseite Ihrer Finger, so haben Sie die Mm. rhomboidei mitgenommen.</translation>
    </message>
    <message>
      <source>Stay on the muscle at its front border, where the nerve enters.</source>
      <translation>Am Vorderrand, wo der Nerv eintritt, auf dem Muskel bleiben.</translation>
    </message>
    <message>
      <source>Free acromion and spine as well</source>
      <translation>Auch Acromion und Spina lösen</translation>
    </message>
    <message>
      <source>Lies flatter; the hinge is the clavicle alone.</source>
      <translation>Liegt flacher; das Scharnier ist allein die Clavicula.</translation>
    </message>
    <message>
      <source>lateral third of the clavicle</source>
      <translation>laterales Drittel der Clavicula</translation>
    </message>
    <message>
      <source>superolateral</source>
      <translation>nach oben außen</translation>
    </message>
    <message>
      <source>Cut the outer end</source>
      <translation>Das äußere Ende schneiden</translation>
    </message>
    <message>
      <source>Keeps the spines whole; the bundle has to be lifted off the muscle.</source>
      <translation>Lässt den Ursprung an den Dornfortsätzen ganz; das Gefäß-Nerven-Bündel muss vom Muskel gehoben werden.</translation>
    </message>
    <message>
      <source>spines</source>
      <translation>Dornfortsätze</translation>
    </message>
    <message>
      <source>inward</source>
      <translation>nach innen</translation>
    </message>
    <message>
      <source>Hands beneath from both edges. Cut from the upper border, lateral to its sheet tendon, down to the crest, short of the ribs; fold it on its rib slips.</source>
      <translation>Von beiden Rändern mit den Händen unterfahren. Vom Oberrand lateral seiner Sehnenplatte bis zur Crista iliaca schneiden, vor den Rippen enden; auf seine Rippenzacken umklappen.</translation>
    </message>
    <message>
      <source>medial end, in the flesh beside the aponeurosis</source>
      <translation>mediales Ende, im Fleisch neben der Aponeurose</translation>
    </message>
    <message>
      <source>Nerve and vessels come from the arm side: stop before the armpit.</source>
      <translation>Nerv und Gefäße kommen von der Armseite: vor der Achsel aufhören.</translation>
    </message>
    <message>
      <source>The cut nearer the spines, or through the belly; some only draw it aside.</source>
      <translation>Schnitt näher an den Dornfortsätzen oder durch den Muskelbauch; manche ziehen ihn nur zur Seite.</translation>
    </message>
    <message>
      <source>from the upper border about 5 cm from the midline, down and out through the flesh just outside its sheet tendon, to the crest</source>
      <translation>vom Oberrand etwa 5 cm neben der Mittellinie nach außen unten durch das Fleisch knapp außerhalb seiner Sehnenplatte bis zur Crista iliaca</translation>
    </message>
    <message>
      <source>rib slips and outer edge</source>
      <translation>Rippenzacken und Außenrand</translation>
    </message>
    <message>
      <source>Serratus posterior inferior lies directly beneath, with the same slope; its thin aponeurosis is fused near T11 to L2: cut lateral to that, through latissimus only.</source>
      <translation>Der M. serratus posterior inferior liegt unmittelbar darunter, mit gleicher Neigung; seine dünne Aponeurose ist nahe T11 bis L2 verwachsen: lateral davon schneiden, nur durch den M. latissimus dorsi.</translation>
    </message>
    <message>
      <source>Part minor from major by their attachments. Cut from the spines, from below upward, and fold them on the medial border like a page; find the dorsal scapular nerve and vessels on the deep face.</source>
      <translation>M. rhomboideus minor und major nach ihren Ansätzen trennen. Von unten nach oben an den Dornfortsätzen schneiden und wie eine Buchseite auf den Margo medialis umklappen; auf der Unterseite N. dorsalis scapulae und Gefäße aufsuchen.</translation>
    </message>
    <message>
      <source>medial end: spines and nuchal ligament</source>
      <translation>mediales Ende: Dornfortsätze und Lig. nuchae</translation>
    </message>
    <message>
      <source>Cut at the spines, not at the border, where the bundle runs.</source>
      <translation>An den Dornfortsätzen schneiden, nicht am Margo medialis, wo das Gefäß-Nerven-Bündel läuft.</translation>
    </message>
    <message>
      <source>Minor and major one after the other; some cut at the border.</source>
      <translation>M. rhomboideus minor und major nacheinander; manche schneiden am Margo medialis.</translation>
    </message>
    <message>
      <source>close to the spines, T5 upward to the lower nuchal ligament</source>
      <translation>dicht an den Dornfortsätzen, von T5 aufwärts bis zum unteren Lig. nuchae</translation>
    </message>
    <message>
      <source>Serratus posterior superior is directly beneath and paper thin: it comes away with the rhomboids if the finger goes too deep.</source>
      <translation>Der M. serratus posterior superior liegt unmittelbar darunter und ist dünn wie Papier: Er geht mit den Mm. rhomboidei ab, wenn der Finger zu tief gerät.</translation>
    </message>
    <message>
      <source>See its slips and its twist; leave the cervical end. Free the scapular end and turn it up only if the course says so.</source>
      <translation>Seine Zacken und seine Drehung ansehen; das zervikale Ende lassen. Das Ende an der Scapula nur lösen und aufklappen, wenn der Kurs es vorsieht.</translation>
    </message>
    <message>
      <source>lower end: superior angle of the scapula</source>
      <translation>unteres Ende: Angulus superior der Scapula</translation>
    </message>
    <message>
      <source>upward</source>
      <translation>nach oben</translation>
    </message>
    <message>
      <source>Many courses leave it in place.</source>
      <translation>Viele Kurse lassen ihn an Ort und Stelle.</translation>
    </message>
    <message>
      <source>at the superior angle</source>
      <translation>am Angulus superior</translation>
    </message>
    <message>
      <source>transverse processes of C1 to C4</source>
      <translation>Querfortsätze von C1 bis C4</translation>
    </message>
    <message>
      <source>The dorsal scapular bundle runs just under, or through, its lower end.</source>
      <translation>Das Bündel aus N. und A. dorsalis scapulae läuft dicht unter seinem unteren Ende oder durch dieses hindurch.</translation>
    </message>
    <message>
      <source>See its slope and its sheet tendon; cut through the tendon at the spines and fold it on its ribs.</source>
      <translation>Seine Neigung und seine Sehnenplatte ansehen; die Sehne an den Dornfortsätzen durchtrennen und auf die Rippen umklappen.</translation>
    </message>
    <message>
      <source>medial end, in the sheet tendon</source>
      <translation>mediales Ende, in der Sehnenplatte</translation>
    </message>
    <message>
      <source>Some only study it.</source>
      <translation>Manche sehen ihn sich nur an.</translation>
    </message>
    <message>
      <source>lower nuchal ligament to T3, through the sheet tendon</source>
      <translation>unteres Lig. nuchae bis T3, durch die Sehnenplatte</translation>
    </message>
    <message>
      <source>ends on ribs 2 to 5</source>
      <translation>Enden an der 2. bis 5. Rippe</translation>
    </message>
    <message>
      <source>Its nerves come from the rib side: the hinge keeps them.</source>
      <translation>Seine Nerven kommen von der Rippenseite: Das Scharnier erhält sie.</translation>
    </message>
    <message>
      <source>See its slope; cut where its tendon leaves the fascia, about 3 cm from the midline, and fold it on its ribs.</source>
      <translation>Seine Neigung ansehen; schneiden, wo seine Sehne die Faszie verlässt, etwa 3 cm neben der Mittellinie, und auf die Rippen umklappen.</translation>
    </message>
    <message>
      <source>outward and up</source>
      <translation>nach außen oben</translation>
    </message>
    <message>
      <source>Some fold it with latissimus in one flap.</source>
      <translation>Manche klappen ihn mit dem M. latissimus dorsi in einem Lappen um.</translation>
    </message>
    <message>
      <source>T11 to L2, 3 cm out, through the sheet tendon</source>
      <translation>T11 bis L2, 3 cm lateral, durch die Sehnenplatte</translation>
    </message>
    <message>
      <source>ends on ribs 9 to 12</source>
      <translation>Enden an der 9. bis 12. Rippe</translation>
    </message>
    <message>
      <source>Tendon and fascia are one near the midline: cut further out.</source>
      <translation>Sehne und Faszie sind nahe der Mittellinie eins: weiter außen schneiden.</translation>
    </message>
    <message>
      <source>See that the fibres run up and out; cut from nuchal ligament and spines, and fold both on mastoid, nuchal line and transverse processes.</source>
      <translation>Prüfen, dass die Fasern nach außen ansteigen; von Lig. nuchae und Dornfortsätzen lösen und beide auf Proc. mastoideus, Linea nuchalis und Querfortsätze umklappen.</translation>
    </message>
    <message>
      <source>medial end: nuchal ligament and spines</source>
      <translation>mediales Ende: Lig. nuchae und Dornfortsätze</translation>
    </message>
    <message>
      <source>Both splenii together, or capitis only.</source>
      <translation>Beide Mm. splenii zusammen oder nur der M. splenius capitis.</translation>
    </message>
    <message>
      <source>lower nuchal ligament to T6</source>
      <translation>unteres Lig. nuchae bis T6</translation>
    </message>
    <message>
      <source>mastoid process, lateral nuchal line, transverse processes of C1 to C3</source>
      <translation>Proc. mastoideus, laterale Linea nuchalis, Querfortsätze von C1 bis C3</translation>
    </message>
    <message>
      <source>The greater occipital nerve comes out at the inner edge higher up: look before cutting the top.</source>
      <translation>Der N. occipitalis major tritt weiter oben am Innenrand aus: erst nachsehen, dann das obere Ende schneiden.</translation>
    </message>
    <message>
      <source>Lift before cutting. Nick it two finger-widths from the midline, cut from T12 to the level of the posterior superior spine and across at both ends, and thin it off outward. Upward it thins to a film.</source>
      <translation>Vor dem Schneiden anheben. Zwei Fingerbreit neben der Mittellinie einritzen, von T12 bis zur Höhe der Spina iliaca posterior superior und an beiden Enden quer schneiden, dann nach außen abheben. Nach oben läuft sie in ein Häutchen aus.</translation>
    </message>
    <message>
      <source>medial edge</source>
      <translation>medialer Rand</translation>
    </message>
    <message>
      <source>A single midline cut, a window, or whole removal.</source>
      <translation>Ein einziger medianer Schnitt, ein Fenster oder ganz entfernen.</translation>
    </message>
    <message>
      <source>two finger-widths from the midline, T12 to the level of the posterior superior iliac spine, and across at both ends</source>
      <translation>zwei Fingerbreit neben der Mittellinie, T12 bis zur Höhe der Spina iliaca posterior superior, und an beiden Enden quer</translation>
    </message>
    <message>
      <source>The aponeurosis beneath is vertical and shiny: stop there. Below L5 fascia and aponeurosis do not part.</source>
      <translation>Die Aponeurose darunter ist längs gefasert und glänzt: dort aufhören. Unterhalb von L5 lassen sich Faszie und Aponeurose nicht trennen.</translation>
    </message>
    <message>
      <source>From lateral to medial: iliocostalis, longissimus, spinalis. Part them by hand from about the lower thorax upward, along the lines of fat; below it they are one. Find a lateral branch of a posterior ramus in the outer groove.</source>
      <translation>Von lateral nach medial: M. iliocostalis, M. longissimus, M. spinalis. Etwa ab der unteren Brust aufwärts mit der Hand entlang der Fettstreifen trennen; darunter sind sie eins. In der äußeren Rinne einen Ramus lateralis eines Ramus posterior aufsuchen.</translation>
    </message>
    <message>
      <source>Drawn aside, windowed or removed.</source>
      <translation>Zur Seite gezogen, gefenstert oder entfernt.</translation>
    </message>
    <message>
      <source>Start in mid-chest, where the groove is clearest.</source>
      <translation>In der Mitte der Brust beginnen, wo die Rinne am deutlichsten ist.</translation>
    </message>
    <message>
      <source>Follow iliocostalis cervicis, longissimus cervicis and longissimus capitis to their ends; capitis is the narrow strap to the mastoid.</source>
      <translation>M. iliocostalis cervicis, M. longissimus cervicis und M. longissimus capitis bis zu ihren Enden verfolgen; der M. longissimus capitis ist der schmale Riemen zum Proc. mastoideus.</translation>
    </message>
    <message>
      <source>Free the greater occipital nerve from it first. Then cut below the occiput, from the midline outward, and fold it down.</source>
      <translation>Zuerst den N. occipitalis major aus ihm lösen. Dann unter dem Hinterhaupt von der Mittellinie nach außen schneiden und nach unten umklappen.</translation>
    </message>
    <message>
      <source>upper end, below the skull</source>
      <translation>oberes Ende, unter dem Schädel</translation>
    </message>
    <message>
      <source>down and outward</source>
      <translation>nach unten außen</translation>
    </message>
    <message>
      <source>The nerve passes through the muscle: free it, then cut above it.</source>
      <translation>Der Nerv tritt durch den Muskel: erst lösen, dann oberhalb davon schneiden.</translation>
    </message>
    <message>
      <source>Cut and turned down, or split lengthwise and drawn apart.</source>
      <translation>Durchtrennt und nach unten geklappt oder längs gespalten und auseinandergezogen.</translation>
    </message>
    <message>
      <source>below the occiput, between the nuchal lines, from the midline outward</source>
      <translation>unter dem Hinterhaupt, zwischen den Lineae nuchales, von der Mittellinie nach außen</translation>
    </message>
    <message>
      <source>its origin, C7 to T6</source>
      <translation>sein Ursprung, C7 bis T6</translation>
    </message>
    <message>
      <source>Not to bone: the suboccipital muscles lie immediately deep.</source>
      <translation>Nicht bis auf den Knochen: Die kurzen Nackenmuskeln liegen unmittelbar darunter.</translation>
    </message>
    <message>
      <source>Lift the venous clot piece by piece. Show the three borders, the floor, the vertebral artery on the arch of the atlas, and the suboccipital nerve between them.</source>
      <translation>Das venöse Gerinnsel stückweise herausheben. Die drei Seiten, den Boden, die A. vertebralis auf dem Atlasbogen und dazwischen den N. suboccipitalis darstellen.</translation>
    </message>
    <message>
      <source>The vertebral artery goes through the membrane of the floor: do not probe blindly.</source>
      <translation>Die A. vertebralis tritt durch die Membran des Bodens: nicht blind sondieren.</translation>
    </message>
    <message>
      <source>In the back lab or in that of head and neck.</source>
      <translation>Im Rückenkurs oder in dem von Kopf und Hals.</translation>
    </message>
    <message>
      <source>No blade in the triangle.</source>
      <translation>Keine Klinge im Dreieck.</translation>
    </message>
    <message>
      <source>Cut across longissimus and spinalis at T6 and T10, and lift the common mass off at L2 to L5; draw them outward. Semispinalis and multifidus lie in the window.</source>
      <translation>M. longissimus und M. spinalis bei T6 und T10 quer durchtrennen und die gemeinsame Masse bei L2 bis L5 abheben; nach außen ziehen. In den Fenstern liegen M. semispinalis und M. multifidus.</translation>
    </message>
    <message>
      <source>medial part, in windows</source>
      <translation>medialer Teil, in Fenstern</translation>
    </message>
    <message>
      <source>Windows, whole removal of the columns, or drawing aside only; one column left whole to compare.</source>
      <translation>Fenster, die Säulen ganz entfernen oder nur zur Seite ziehen; eine Säule zum Vergleich ganz lassen.</translation>
    </message>
    <message>
      <source>across longissimus and spinalis at T6</source>
      <translation>quer durch M. longissimus und M. spinalis bei T6</translation>
    </message>
    <message>
      <source>across longissimus and spinalis at T10</source>
      <translation>quer durch M. longissimus und M. spinalis bei T10</translation>
    </message>
    <message>
      <source>across the common mass at L2</source>
      <translation>quer durch die gemeinsame Masse bei L2</translation>
    </message>
    <message>
      <source>line of the rib angles</source>
      <translation>Linie der Anguli costarum</translation>
    </message>
    <message>
      <source>Fibres running up and inward are the slanting group: you are there.</source>
      <translation>Fasern, die nach innen ansteigen, sind das schräge System: Sie sind angekommen.</translation>
    </message>
    <message>
      <source>Draw the cervical columns aside: semispinalis cervicis with its thick slip to the axis, multifidus beneath it, spinalis cervicis if there is one.</source>
      <translation>Die zervikalen Säulen zur Seite ziehen: M. semispinalis cervicis mit seiner dicken Zacke zum Axis, darunter M. multifidus, M. spinalis cervicis, wenn es ihn gibt.</translation>
    </message>
    <message>
      <source>Lift slips of semispinalis and multifidus: rotatores one and two levels up, levatores costarum on the backs of the ribs, interspinales and intertransversarii in neck and loin.</source>
      <translation>Zacken von M. semispinalis und M. multifidus anheben: Mm. rotatores über eine und zwei Etagen, Mm. levatores costarum auf der Rückseite der Rippen, Mm. interspinales und Mm. intertransversarii an Hals und Lende.</translation>
    </message>
    <message>
      <source>Often shown on one side by staff.</source>
      <translation>Oft auf einer Seite vom Personal gezeigt.</translation>
    </message>
    <message>
      <source>One window each in mid-neck, mid-chest and loin is enough.</source>
      <translation>Je ein Fenster in der Mitte von Hals, Brust und Lende genügt.</translation>
    </message>
    <message>
      <source>Clean the laminae to bone. Under supervision, saw on both sides medial to the facets, short of the canal, and finish bluntly; lift laminae and spines as one strip.</source>
      <translation>Die Laminae bis auf den Knochen säubern. Unter Aufsicht beidseits medial der Gelenkfortsätze bis kurz vor den Kanal sägen und stumpf beenden; Laminae und Dornfortsätze als einen Streifen abheben.</translation>
    </message>
    <message>
      <source>laminae of both sides, first and last level across</source>
      <translation>Laminae beider Seiten, quer in der ersten und der letzten Höhe</translation>
    </message>
    <message>
      <source>lifted off</source>
      <translation>abgehoben</translation>
    </message>
    <message>
      <source>Only under supervision, with eye or face protection and a mask against dust and splashes. Cut bone is sharp: pad it.</source>
      <translation>Nur unter Aufsicht, mit Augen- oder Gesichtsschutz und Maske gegen Staub und Spritzer. Geschnittener Knochen ist scharf: abpolstern.</translation>
    </message>
    <message>
      <source>None, T6 to T12, L1 to S2, or the whole column; saw, chisel, or prepared by staff. The picture takes whole vertebrae and the whole supraspinous ligament away, where the knife takes only the arches and the ligament between them.</source>
      <translation>Gar nicht, T6 bis T12, L1 bis S2 oder die ganze Säule; Säge, Meißel oder vom Personal vorbereitet. Das Bild nimmt ganze Wirbel und das ganze Lig. supraspinale fort, wo man in Wirklichkeit nur die Bögen und das Band dazwischen nimmt.</translation>
    </message>
    <message>
      <source>through the laminae, medial to the facets</source>
      <translation>durch die Laminae, medial der Gelenkfortsätze</translation>
    </message>
    <message>
      <source>Ligamenta flava are truly yellow: the next layer is fat round the dura.</source>
      <translation>Die Ligg. flava sind wirklich gelb: Als Nächstes kommt das Fett um die Dura.</translation>
    </message>
    <message>
      <source>Clear the fat and the veins, open the dura in the midline and pin it aside; see arachnoid, denticulate ligaments, roots, cord, and one ganglion with its rami in full.</source>
      <translation>Fett und Venen entfernen, die Dura in der Mittellinie eröffnen und seitlich feststecken; Arachnoidea, Ligg. denticulata, Wurzeln, Rückenmark und ein Ganglion mit allen seinen Rami ansehen.</translation>
    </message>
    <message>
      <source>midline of the dura</source>
      <translation>Mittellinie der Dura</translation>
    </message>
    <message>
      <source>outward, both ways</source>
      <translation>nach außen, zu beiden Seiten</translation>
    </message>
    <message>
      <source>Pins count as sharps; fluid may drain, so gloves and eye protection stay on.</source>
      <translation>Nadeln gelten als scharf und spitz; es kann Flüssigkeit austreten, deshalb bleiben Handschuhe und Augenschutz an.</translation>
    </message>
    <message>
      <source>Often a later lab.</source>
      <translation>Oft in einem späteren Kurs.</translation>
    </message>
    <message>
      <source>dura in the midline, the length of the window</source>
      <translation>Dura in der Mittellinie, so lang wie das Fenster</translation>
    </message>
    <message>
      <source>its edges, pinned out both ways</source>
      <translation>ihre Ränder, zu beiden Seiten festgesteckt</translation>
    </message>
    <message>
      <source>One level shown in full beats six begun.</source>
      <translation>Eine Höhe ganz gezeigt ist mehr wert als sechs angefangene.</translation>
    </message>
    <message>
      <source>shoulder blade</source>
      <translation>Scapula</translation>
    </message>
    <message>
      <source>window</source>
      <translation>Fenster</translation>
    </message>
    <message>
      <source>Rhomboids lifted with trapezius</source>
      <translation>Mm. rhomboidei mit dem M. trapezius abgehoben</translation>
    </message>
    <message>
      <source>Slanting fibres on the underside of the flap, and beneath it ribs and a thin sheet at once instead of the rhomboids.</source>
      <translation>Schräge Fasern auf der Unterseite des Lappens, und darunter statt der Mm. rhomboidei sogleich Rippen und eine dünne Platte.</translation>
    </message>
    <message>
      <source>The flap is thicker than a finger's breadth of felt, and its deep face has fibres that run down and out; trapezius has none that do.</source>
      <translation>Der Lappen ist dicker als eine fingerdicke Filzlage, und auf seiner Unterseite ziehen Fasern nach außen unten; im M. trapezius gibt es solche nicht.</translation>
    </message>
    <message>
      <source>The plane was entered one layer too deep. Near C7 the upper edge of rhomboid minor and the tendon of trapezius are one.</source>
      <translation>Die Präparation ging eine Schicht zu tief hinein. Nahe C7 sind der Oberrand des M. rhomboideus minor und die Sehne des M. trapezius eins.</translation>
    </message>
    <message>
      <source>Start low and outside, near the inferior angle, with the palm to the muscle.</source>
      <translation>Tief unten und außen beginnen, nahe dem Angulus inferior, mit der Hohlhand zum Muskel.</translation>
    </message>
    <message>
      <source>Find the fat between the two at the outer edge, peel the rhomboids off the flap from there, and lay them back.</source>
      <translation>Am Außenrand das Fett zwischen beiden suchen, die Mm. rhomboidei von dort vom Lappen abschälen und zurücklegen.</translation>
    </message>
    <message>
      <source>Accessory nerve left on the chest</source>
      <translation>N. accessorius auf dem Brustkorb zurückgelassen</translation>
    </message>
    <message>
      <source>A thread lies across levator scapulae, and the deep face of the flap is bare.</source>
      <translation>Ein Faden liegt über dem M. levator scapulae, und die Unterseite des Lappens ist kahl.</translation>
    </message>
    <message>
      <source>No fat on the deep face of the flap: the nerve runs in it.</source>
      <translation>Kein Fett auf der Unterseite des Lappens: Darin verläuft der Nerv.</translation>
    </message>
    <message>
      <source>The finger went between the nerve's fat and the muscle.</source>
      <translation>Der Finger geriet zwischen das Fett des Nervs und den Muskel.</translation>
    </message>
    <message>
      <source>Keep the fat on the flap, above all from the upper outer border downward.</source>
      <translation>Das Fett am Lappen lassen, vor allem vom oberen Außenrand abwärts.</translation>
    </message>
    <message>
      <source>Do not cut it. Free the thread downward from where it lies on levator, and lay it back into the flap.</source>
      <translation>Nicht durchtrennen. Den Faden von seiner Lage auf dem M. levator scapulae abwärts lösen und in den Lappen zurücklegen.</translation>
    </message>
    <message>
      <source>Greater occipital nerve cut at the upper end of trapezius</source>
      <translation>N. occipitalis major am oberen Ende des M. trapezius durchtrennt</translation>
    </message>
    <message>
      <source>No nerve comes out of semispinalis capitis, and none runs up over the occiput.</source>
      <translation>Aus dem M. semispinalis capitis tritt kein Nerv, und keiner zieht über das Hinterhaupt hinauf.</translation>
    </message>
    <message>
      <source>The cut along the nuchal line is longer than about 2.5 cm, or has gone through more than the thin tendon.</source>
      <translation>Der Schnitt entlang der Linea nuchalis ist länger als etwa 2,5 cm oder ging durch mehr als die dünne Sehne.</translation>
    </message>
    <message>
      <source>The cross cut went too far out or too deep: the nerve comes through there to the scalp.</source>
      <translation>Der Querschnitt reichte zu weit nach außen oder zu tief: Dort tritt der Nerv zur Kopfhaut durch.</translation>
    </message>
    <message>
      <source>Look for the nerve in the fat first; end the cross cut at 2.5 cm.</source>
      <translation>Zuerst im Fett nach dem Nerv suchen; den Querschnitt bei 2,5 cm beenden.</translation>
    </message>
    <message>
      <source>Look for its stump where it leaves semispinalis, and keep the other side with more care.</source>
      <translation>Den Stumpf dort suchen, wo er den M. semispinalis verlässt, und auf der anderen Seite mehr achtgeben.</translation>
    </message>
    <message>
      <source>Serratus posterior superior taken with the rhomboids</source>
      <translation>M. serratus posterior superior mit den Mm. rhomboidei mitgenommen</translation>
    </message>
    <message>
      <source>The flap is too thick and has a white sheet on its underside; splenius and the columns lie bare.</source>
      <translation>Der Lappen ist zu dick und hat unten eine weiße Platte; M. splenius und die Säulen liegen frei.</translation>
    </message>
    <message>
      <source>White, half tendon, where red was expected.</source>
      <translation>Weiß, halb Sehne, wo Rot zu erwarten war.</translation>
    </message>
    <message>
      <source>It is a few millimetres thin, half of it tendon, and directly beneath.</source>
      <translation>Er ist nur wenige Millimeter dick, zur Hälfte Sehne, und liegt unmittelbar darunter.</translation>
    </message>
    <message>
      <source>Part the two at the outer border first, where fat lies between them.</source>
      <translation>Die beiden zuerst am Außenrand trennen, wo Fett zwischen ihnen liegt.</translation>
    </message>
    <message>
      <source>Start at the ribs: hold its slips down, strip it off the flap towards the spines, and lay it back.</source>
      <translation>An den Rippen beginnen: seine Zacken unten halten, ihn zu den Dornfortsätzen hin vom Lappen abziehen und zurücklegen.</translation>
    </message>
    <message>
      <source>Dorsal scapular bundle torn</source>
      <translation>Bündel aus N. und A. dorsalis scapulae zerrissen</translation>
    </message>
    <message>
      <source>No nerve on the deep face of the rhomboids; a stump at the upper angle of the scapula.</source>
      <translation>Kein Nerv auf der Unterseite der Mm. rhomboidei; ein Stumpf am oberen Winkel der Scapula.</translation>
    </message>
    <message>
      <source>The flap was cut at the border of the scapula, or pulled hard.</source>
      <translation>Der Lappen wurde am Margo medialis der Scapula geschnitten oder stark gezogen.</translation>
    </message>
    <message>
      <source>The bundle runs along the border, on the deep face: a cut there goes through it.</source>
      <translation>Das Bündel läuft auf der Unterseite am Margo medialis entlang: Ein Schnitt dort geht hindurch.</translation>
    </message>
    <message>
      <source>Cut at the spines, and fold the muscles outward like a page.</source>
      <translation>An den Dornfortsätzen schneiden und die Muskeln wie eine Buchseite nach außen klappen.</translation>
    </message>
    <message>
      <source>Find the bundle where it comes from under levator, follow it down, and note what is lost.</source>
      <translation>Das Bündel aufsuchen, wo es unter dem M. levator scapulae hervorkommt, abwärts verfolgen und festhalten, was verloren ist.</translation>
    </message>
    <message>
      <source>Serratus posterior inferior cut with latissimus</source>
      <translation>M. serratus posterior inferior mit dem M. latissimus dorsi durchtrennt</translation>
    </message>
    <message>
      <source>No thin slips at ribs 9 to 12: the fascia over the columns and the ribs lie bare.</source>
      <translation>Keine dünnen Zacken an der 9. bis 12. Rippe: Die Faszie über den Säulen und die Rippen liegen frei.</translation>
    </message>
    <message>
      <source>The flap has two layers that slide on each other.</source>
      <translation>Der Lappen hat zwei Blätter, die aufeinander gleiten.</translation>
    </message>
    <message>
      <source>It has the same slope as latissimus, and near the midline their tendons are one.</source>
      <translation>Er hat dieselbe Neigung wie der M. latissimus dorsi, und nahe der Mittellinie sind ihre Sehnen eins.</translation>
    </message>
    <message>
      <source>Cut further out, through flesh, with a finger beneath.</source>
      <translation>Weiter außen schneiden, durch Fleisch, mit einem Finger darunter.</translation>
    </message>
    <message>
      <source>Part the two from the rib side, and lay the slips back on ribs 9 to 12.</source>
      <translation>Die beiden von der Rippenseite her trennen und die Zacken auf die 9. bis 12. Rippe zurücklegen.</translation>
    </message>
    <message>
      <source>Fascia and aponeurosis opened together</source>
      <translation>Faszie und Aponeurose zusammen eröffnet</translation>
    </message>
    <message>
      <source>Red muscle wells up in the cut at once, instead of a second white sheet with upright, shining fibres.</source>
      <translation>Im Schnitt quillt sogleich roter Muskel hervor statt einer zweiten weißen Platte mit senkrechten, glänzenden Fasern.</translation>
    </message>
    <message>
      <source>Low down the two do not part: below L5 there is nothing between them to find.</source>
      <translation>Weit unten trennen sich die beiden nicht: Unterhalb von L5 gibt es nichts dazwischen zu finden.</translation>
    </message>
    <message>
      <source>The two are fused low down.</source>
      <translation>Die beiden sind unten verwachsen.</translation>
    </message>
    <message>
      <source>Nick the fascia at L1 or L2, where they part; lift, then lengthen the cut.</source>
      <translation>Die Faszie bei L1 oder L2 einritzen, wo sie sich trennen; anheben, dann den Schnitt verlängern.</translation>
    </message>
    <message>
      <source>Stop, go up to L1, find the plane there, and follow it down.</source>
      <translation>Aufhören, nach L1 hinaufgehen, dort die Schicht suchen und nach unten verfolgen.</translation>
    </message>
    <message>
      <source>Skin taken with superficial fascia and the film of the muscle</source>
      <translation>Haut mit oberflächlicher Faszie und Muskelhäutchen mitgenommen</translation>
    </message>
    <message>
      <source>Muscle lies bare and ragged beneath the flap, and there is no fat in which to look for nerves.</source>
      <translation>Unter dem Lappen liegt der Muskel frei und zerfasert, und es gibt kein Fett, in dem man nach Nerven suchen könnte.</translation>
    </message>
    <message>
      <source>Red in the cut: the edge should show yellow.</source>
      <translation>Rot im Schnitt: Der Rand soll gelb sein.</translation>
    </message>
    <message>
      <source>The blade was not turned to the skin.</source>
      <translation>Die Klinge war nicht zur Haut gewandt.</translation>
    </message>
    <message>
      <source>Turn the edge to the skin, and stop at the fat.</source>
      <translation>Die Schneide zur Haut wenden und am Fett aufhören.</translation>
    </message>
    <message>
      <source>Turn back into the fat at the flap's edge; look for cutaneous nerves on the deep face of the flap.</source>
      <translation>Am Lappenrand ins Fett zurückkehren; auf der Unterseite des Lappens nach Hautnerven suchen.</translation>
    </message>
    <message>
      <source>Cut across the fibres while cleaning</source>
      <translation>Beim Säubern quer zu den Fasern geschnitten</translation>
    </message>
    <message>
      <source>Stripes and steps in the muscle, with short cut ends standing up.</source>
      <translation>Streifen und Stufen im Muskel, mit kurzen, abstehenden Schnittenden.</translation>
    </message>
    <message>
      <source>The blade catches; clean scraping slides.</source>
      <translation>Die Klinge hakt; sauberes Schaben gleitet.</translation>
    </message>
    <message>
      <source>Scraped across the fibres, which change direction three times in trapezius.</source>
      <translation>Quer zu den Fasern geschabt, die im M. trapezius dreimal die Richtung wechseln.</translation>
    </message>
    <message>
      <source>Look where the fibres run, and scrape along them.</source>
      <translation>Ansehen, wohin die Fasern laufen, und mit ihnen schaben.</translation>
    </message>
    <message>
      <source>Lay the ends down along the fibres, and go on with scissors opened along them.</source>
      <translation>Die Enden mit den Fasern anlegen und mit einer in Faserrichtung gespreizten Schere fortfahren.</translation>
    </message>
    <message>
      <source>Wrong level for the windows</source>
      <translation>Falsche Höhe der Fenster</translation>
    </message>
    <message>
      <source>The window lies at T8 where T6 was wanted.</source>
      <translation>Das Fenster liegt bei T8, wo T6 gewünscht war.</translation>
    </message>
    <message>
      <source>Counting up from the crest and down from C7 do not meet.</source>
      <translation>Die Zählung von der Crista iliaca aufwärts und die von C7 abwärts treffen sich nicht.</translation>
    </message>
    <message>
      <source>Counted from the tip of the scapula, which lies lower in a donor who lies face down with the arms forward.</source>
      <translation>Von der Spitze der Scapula gezählt, die tiefer liegt, wenn die Arme in Bauchlage nach vorn liegen.</translation>
    </message>
    <message>
      <source>Count from both ends, and go on only when they agree.</source>
      <translation>Von beiden Enden zählen und erst weitermachen, wenn sie übereinstimmen.</translation>
    </message>
    <message>
      <source>Nothing is lost: name the window by its true level, and make the other as well.</source>
      <translation>Nichts ist verloren: Das Fenster nach seiner wahren Höhe benennen und das andere auch anlegen.</translation>
    </message>
    <message>
      <source>{name}, stratum {n} ({layer}).</source>
      <translation>{name}, Schicht {n} ({layer}).</translation>
    </message>
    <message>
      <source>From {start} to {end}.</source>
      <translation>Ursprung: {start}. Ansatz: {end}.</translation>
    </message>
    <message>
      <source>Nerve: {nerve}.</source>
      <translation>Nerv: {nerve}.</translation>
    </message>
    <message>
      <source>in “{step}”</source>
      <translation>in „{step}“</translation>
    </message>
    <message>
      <source>How it looks</source>
      <translation>Wie es aussieht</translation>
    </message>
    <message>
      <source>How to tell</source>
      <translation>Woran man es erkennt</translation>
    </message>
    <message>
      <source>Why here</source>
      <translation>Warum hier</translation>
    </message>
    <message>
      <source>How to avoid it</source>
      <translation>Wie man es vermeidet</translation>
    </message>
    <message>
      <source>What can be saved</source>
      <translation>Was noch zu retten ist</translation>
    </message>
    <message>
      <source>Rapid review, {where}</source>
      <translation>Schnelldurchgang, {where}</translation>
    </message>
    <message>
      <source>both sides</source>
      <translation>beide Seiten</translation>
    </message>
    <message>
      <source>{count} part</source>
      <translation>{count} Teil</translation>
    </message>
    <message>
      <source>Millimetres; x to the donor's left, y to the back, z to the head.</source>
      <translation>Millimeter; x nach links, y nach hinten, z zum Kopf, vom Körper aus gesehen.</translation>
    </message>
    <message>
      <source>Metres in glTF's axes: left +X, head +Y, front +Z; colours by kind.</source>
      <translation>Meter in den Achsen von glTF: links +X, Kopf +Y, vorn +Z; Farben nach Art.</translation>
    </message>
    <message>
      <source>The open talk: {title}</source>
      <translation>Der geöffnete Vortrag: {title}</translation>
    </message>
    <message>
      <source>One file of about 3 MB that opens in a browser with no network, on a phone too: turn, peel, hide, see through, names and captions, search, the steps of the plan, cautions.</source>
      <translation>Eine Datei von etwa 3 MB, die sich ohne Netz im Browser öffnet, auch auf dem Telefon: drehen, abtragen, verbergen, durchscheinen lassen, Namen und Bildtexte, Suche, die Schritte des Plans, Hinweise.</translation>
    </message>
    <message>
      <source>Folds, sections and probing stay in this program.</source>
      <translation>Umklappen, Schnittbilder und Sondieren gibt es nur in diesem Programm.</translation>
    </message>
    <message>
      <source>{parts}, each a closed shell. {frame} Thin sheets are less than a millimetre thick: a printer may need them scaled up.</source>
      <translation>{parts}, jedes eine geschlossene Hülle. {frame} Dünne Blätter messen weniger als einen Millimeter: Zum Drucken muss man sie vielleicht vergrößern.</translation>
    </message>
    <message>
      <source>Tick a step at least.</source>
      <translation>Mindestens einen Schritt ankreuzen.</translation>
    </message>
    <message>
      <source>The scenes of the talk are in it, with its notes.</source>
      <translation>Die Szenen des Vortrags sind darin, mit den Notizen.</translation>
    </message>
    <message>
      <source>The scenes of the talk are in it, without its notes.</source>
      <translation>Die Szenen des Vortrags sind darin, ohne die Notizen.</translation>
    </message>
    <message>
      <source>(tick; a missing thing is reported, not hunted)</source>
      <translation>(ankreuzen; was fehlt, wird gemeldet, nicht gesucht)</translation>
    </message>
    <message>
      <source>Lab sheet: the back, blank labels</source>
      <translation>Arbeitsblatt: der Rücken, ohne Namen</translation>
    </message>
    <message>
      <source>Lab sheet: the back</source>
      <translation>Arbeitsblatt: der Rücken</translation>
    </message>
    <message>
      <source>The back: test yourself</source>
      <translation>Der Rücken: zur Selbstprüfung</translation>
    </message>
    <message>
      <source>{sides}, {steps}. {about}</source>
      <translation>{sides}, {steps}. {about}</translation>
    </message>
    <message>
      <source>Pictures: Peelback {version}, a computed back ({sex}, {stature} mm tall), standing; the donor lies prone and is another person.</source>
      <translation>Bilder: Peelback {version}, ein berechneter Rücken ({sex}, {stature} mm groß), stehend; auf dem Tisch liegt ein anderer Mensch auf dem Bauch.</translation>
    </message>
    <message>
      <source>Write the names beside the numbers; the answers stand on the last page.</source>
      <translation>Namen neben die Zahlen schreiben; die Antworten stehen auf der letzten Seite.</translation>
    </message>
    <message>
      <source>Names in bold are kept, not cut.</source>
      <translation>Fett gedruckte Namen werden geschont, nicht geschnitten.</translation>
    </message>
    <message>
      <source>Raised marks name the source below the table's end; m: from memory, p: common practice without a source, *: place in the source recalled, not read. Latin with (?): recalled.</source>
      <translation>Hochgestellte Zeichen nennen die Quelle am Ende des Blattes; m: aus dem Gedächtnis, p: üblich, ohne Quelle, *: Stelle der Quelle erinnert, nicht nachgelesen. Latein mit (?): erinnert.</translation>
    </message>
    <message>
      <source>hinge, folded {direction}</source>
      <translation>Scharnier, geklappt {direction}</translation>
    </message>
    <message>
      <source>hinge</source>
      <translation>Scharnier</translation>
    </message>
    <message>
      <source>KEEP: {names}</source>
      <translation>SCHONEN: {names}</translation>
    </message>
    <message>
      <source>Done</source>
      <translation>Erledigt</translation>
    </message>
    <message>
      <source>Minutes</source>
      <translation>Minuten</translation>
    </message>
    <message>
      <source>First</source>
      <translation>Davor</translation>
    </message>
    <message>
      <source>Muscle</source>
      <translation>Muskel</translation>
    </message>
    <message>
      <source>From – to</source>
      <translation>Von – nach</translation>
    </message>
    <message>
      <source>Nerve; artery</source>
      <translation>Nerv; Arterie</translation>
    </message>
    <message>
      <source>What differs in this donor</source>
      <translation>Was bei dieser Körperspende anders ist</translation>
    </message>
    <message>
      <source>{count} step</source>
      <translation>{count} Schritt</translation>
    </message>
    <message>
      <source>{count} steps</source>
      <translation>{count} Schritte</translation>
    </message>
    <message>
      <source>On the table</source>
      <translation>Auf dem Tisch</translation>
    </message>
    <message>
      <source>Cautions and kit: common practice, no source. Your own course decides.</source>
      <translation>Hinweise und Material: üblich, ohne Quelle. Es gilt, was der eigene Kurs bestimmt.</translation>
    </message>
    <message>
      <source>{minutes} a side</source>
      <translation>{minutes} je Seite</translation>
    </message>
    <message>
      <source>The plan</source>
      <translation>Der Plan</translation>
    </message>
    <message>
      <source>At the model, without names</source>
      <translation>Am Modell, ohne Namen</translation>
    </message>
    <message>
      <source>Step by step</source>
      <translation>Schritt für Schritt</translation>
    </message>
    <message>
      <source>Muscles of these steps</source>
      <translation>Muskeln dieser Schritte</translation>
    </message>
    <message>
      <source>Find</source>
      <translation>Aufsuchen</translation>
    </message>
    <message>
      <source>Date</source>
      <translation>Datum</translation>
    </message>
    <message>
      <source>Table</source>
      <translation>Tisch</translation>
    </message>
    <message>
      <source>Who cuts</source>
      <translation>Wer schneidet</translation>
    </message>
    <message>
      <source>Who reads and ticks</source>
      <translation>Wer liest und ankreuzt</translation>
    </message>
    <message>
      <source>Blades out</source>
      <translation>Klingen ausgegeben</translation>
    </message>
    <message>
      <source>Blades in</source>
      <translation>Klingen zurück</translation>
    </message>
    <message>
      <source>Course's tag number (optional)</source>
      <translation>Nummer des Kurses (freiwillig)</translation>
    </message>
    <message>
      <source>Stop at step</source>
      <translation>Ende bei Schritt</translation>
    </message>
    <message>
      <source>‘First’ names the steps that must be done before.</source>
      <translation>„Davor“ nennt die Schritte, die vorher getan sein müssen.</translation>
    </message>
    <message>
      <source>Dashed: line of cut. Double: hinge.</source>
      <translation>Gestrichelt: Schnittlinie. Doppelt: Scharnier.</translation>
    </message>
    <message>
      <source>optional</source>
      <translation>freiwillig</translation>
    </message>
    <message>
      <source>Stop sign</source>
      <translation>Haltezeichen</translation>
    </message>
    <message>
      <source>from</source>
      <translation>von</translation>
    </message>
    <message>
      <source>to</source>
      <translation>nach</translation>
    </message>
    <message>
      <source>Log of variants</source>
      <translation>Liste der Abweichungen</translation>
    </message>
    <message>
      <source>At the end of the day</source>
      <translation>Am Ende des Tages</translation>
    </message>
    <message>
      <source>page {n} of {count}</source>
      <translation>Seite {n} von {count}</translation>
    </message>
    <message>
      <source>cut</source>
      <translation>Schnitt</translation>
    </message>
    <message>
      <source>{head}, planned for {minutes}. Cautions and kit; the plan with boxes to tick; for each step pictures before and after, what to do, keep and find; a table of {muscles} with ends, nerve, artery, action and sources; a log of variants.</source>
      <translation>{head}, geplant für {minutes}. Hinweise und Material; der Plan zum Ankreuzen; zu jedem Schritt Bilder davor und danach, was zu tun, zu schonen und aufzusuchen ist; eine Tabelle ({muscles}) mit Ansätzen, Nerv, Arterie, Wirkung und Quellen; eine Liste der Abweichungen.</translation>
    </message>
    <message>
      <source>{head}. Cautions; for each step its pictures with numbers and lines to write on; the answers on the last page.</source>
      <translation>{head}. Hinweise; zu jedem Schritt seine Bilder mit Zahlen und Zeilen zum Beschriften; die Antworten auf der letzten Seite.</translation>
    </message>
    <message>
      <source>{head}, planned for {minutes}. Two to four pages: cautions and kit; one row a step with boxes to tick, pictures, cut, hinge, what to keep, stop sign; the end of the day; the table of muscles where it fits.</source>
      <translation>{head}, geplant für {minutes}. Zwei bis vier Seiten: Hinweise und Material; eine Zeile je Schritt mit Kästchen, Bildern, Schnitt, Scharnier, was zu schonen ist, Haltezeichen; das Ende des Tages; die Tabelle der Muskeln, wo sie Platz hat.</translation>
    </message>
    <message>
      <source>{n} minutes a side</source>
      <translation>{n} Minuten je Seite</translation>
    </message>
    <message>
      <source>{n} minutes for both together</source>
      <translation>{n} Minuten für beide zusammen</translation>
    </message>
    <message>
      <source> and </source>
      <translation> und </translation>
    </message>
    <message>
      <source>{count} muscle</source>
      <translation>{count} Muskel</translation>
    </message>
    <message>
      <source>{count} muscles</source>
      <translation>{count} Muskeln</translation>
    </message>
    <message>
      <source>{minutes} min a side</source>
      <translation>{minutes} min je Seite</translation>
    </message>
    <message>
      <source>{minutes} min</source>
      <translation>{minutes} min</translation>
    </message>
    <message>
      <source>Steps</source>
      <translation>Schritte</translation>
    </message>
    <message>
      <source>Dashed: line of cut. Double: hinge. Frame: keep. Tick left and right.</source>
      <translation>Gestrichelt: Schnittlinie. Doppelt: Scharnier. Rahmen: schonen. Links und rechts ankreuzen.</translation>
    </message>
    <message>
      <source>The back: short sheet</source>
      <translation>Der Rücken: kurzes Blatt</translation>
    </message>
    <message>
      <source>The table of muscles stands in the full sheet.</source>
      <translation>Die Tabelle der Muskeln steht im vollen Blatt.</translation>
    </message>
    <message>
      <source>Cautions and kit: common practice, no source.</source>
      <translation>Hinweise und Material: üblich, ohne Quelle.</translation>
    </message>
    <message>
      <source>What differs in this donor (side, step)</source>
      <translation>Was bei dieser Körperspende anders ist (Seite, Schritt)</translation>
    </message>
    <message>
      <source>Peelback: MIT licence, the Peelback authors.</source>
      <translation>Peelback: MIT-Lizenz, die Autoren von Peelback.</translation>
    </message>
    <message>
      <source>Peelback {version}, a back computed from a few numbers: {sex}, {stature} mm tall. Nothing was scanned, and nobody's body is shown.</source>
      <translation>Peelback {version}, ein aus wenigen Zahlen berechneter Rücken: {sex}, {stature} mm groß. Nichts wurde abgetastet, und niemandes Körper ist zu sehen.</translation>
    </message>
    <message>
      <source>This file holds everything it needs and never opens a connection. It opens in browsers of 2023 or later.</source>
      <translation>Diese Datei enthält alles, was sie braucht, und stellt nie eine Verbindung her. Sie öffnet sich in Browsern ab 2023.</translation>
    </message>
    <message>
      <source>What the desktop program does and this page does not: folding flaps on their hinge, sections, probing and measuring, tests, other bodies.</source>
      <translation>Was das Programm kann und diese Seite nicht: Lappen an ihrem Scharnier klappen, Schnittbilder, Sondieren und Messen, Prüfungen, andere Körper.</translation>
    </message>
    <message>
      <source>Facts marked 'from memory' were not looked up; a name in Latin with a question mark was recalled only.</source>
      <translation>Als „aus dem Gedächtnis“ (from memory) bezeichnete Angaben wurden nicht nachgeschlagen; ein lateinischer Name mit Fragezeichen ist nur erinnert.</translation>
    </message>
    <message>
      <source>the left side</source>
      <translation>linke Seite</translation>
    </message>
    <message>
      <source>the right side</source>
      <translation>rechte Seite</translation>
    </message>
    <message>
      <source>male</source>
      <translation>männlich</translation>
    </message>
    <message>
      <source>female</source>
      <translation>weiblich</translation>
    </message>
    <message>
      <source>Blades and pins counted in, and into the sharps container</source>
      <translation>Klingen und Nadeln gezählt und im Behälter für Scharfes</translation>
    </message>
    <message>
      <source>All tissue with its own donor, in the donor's container</source>
      <translation>Alles Gewebe bei seiner Körperspende, in deren Behälter</translation>
    </message>
    <message>
      <source>Flaps laid back in order; wetted, wrapped, covered</source>
      <translation>Lappen der Reihe nach zurückgelegt; befeuchtet, eingeschlagen, zugedeckt</translation>
    </message>
    <message>
      <source>Both sides compared; what differs is written in the log</source>
      <translation>Beide Seiten verglichen; Abweichungen in die Liste geschrieben</translation>
    </message>
    <message>
      <source>Bench wiped, hands washed; injuries and splashes reported</source>
      <translation>Tisch gewischt, Hände gewaschen; Verletzungen und Spritzer gemeldet</translation>
    </message>
    <message>
      <source>Gloves in sizes, eye protection, gown; skin pencil, ruler; blade handle and counted blades in a tray, blade remover; two pairs of blunt forceps, one toothed; curved and straight scissors, blunt-ended; blunt probe; wooden spatula; counted pins; wetting fluid, wrap, the donor's own container, sharps container, wipes; this sheet in a sleeve. Bone tools stay with staff.</source>
      <translation>Handschuhe in mehreren Größen, Augenschutz, Kittel; Hautstift, Lineal; Skalpellgriff und gezählte Klingen in einer Schale, Klingenentferner; zwei anatomische Pinzetten, eine chirurgische; gebogene und gerade Schere, stumpf; stumpfe Sonde; Holzspatel; gezählte Nadeln; Befeuchtungsflüssigkeit, Tücher zum Einschlagen, eigener Behälter der Körperspende, Behälter für Scharfes, Wischtücher; dieses Blatt in einer Hülle. Knochenwerkzeug bleibt bei der Kursleitung.</translation>
    </message>
    <message>
      <source>Teaching model – not for needle or surgical guidance. Local rules come first.</source>
      <translation>Lehrmodell – nicht zur Führung von Nadel oder Messer. Die Regeln vor Ort gehen vor.</translation>
    </message>
    <message>
      <source>Order, cuts, keep lists and minutes are common practice, without a source; courses differ.</source>
      <translation>Reihenfolge, Schnitte, zu Schonendes und Minuten sind üblich, ohne Quelle; Kurse sind verschieden.</translation>
    </message>
    <message>
      <source>Behind</source>
      <translation>Hinten</translation>
    </message>
    <message>
      <source>Search</source>
      <translation>Suchen</translation>
    </message>
    <message>
      <source>Side L</source>
      <translation>Seite L</translation>
    </message>
    <message>
      <source>Side R</source>
      <translation>Seite R</translation>
    </message>
    <message>
      <source>Oblique L</source>
      <translation>Schräg L</translation>
    </message>
    <message>
      <source>Oblique R</source>
      <translation>Schräg R</translation>
    </message>
    <message>
      <source>Above</source>
      <translation>Oben</translation>
    </message>
    <message>
      <source>Below</source>
      <translation>Unten</translation>
    </message>
    <message>
      <source>The back, peeled from skin to bone</source>
      <translation>Der Rücken, abgetragen von der Haut bis zum Knochen</translation>
    </message>
    <message>
      <source>Teaching model: not for needle or surgical guidance. Local rules come first.</source>
      <translation>Lehrmodell: nicht zur Führung von Nadel oder Messer. Die Regeln vor Ort gehen vor.</translation>
    </message>
    <message>
      <source>This browser shows no 3D pictures (WebGL 2 is missing or switched off). Names, captions and the steps of the plan are all here as text.</source>
      <translation>Dieser Browser zeigt keine 3D-Bilder (WebGL 2 fehlt oder ist abgeschaltet). Namen, Bildtexte und die Schritte des Plans stehen alle als Text da.</translation>
    </message>
    <message>
      <source>Peeled to {name}</source>
      <translation>Abgetragen bis: {name}</translation>
    </message>
    <message>
      <source>nothing</source>
      <translation>nichts</translation>
    </message>
    <message>
      <source>Laid all back</source>
      <translation>Alles zurückgelegt</translation>
    </message>
    <message>
      <source>{name} shown</source>
      <translation>{name}: gezeigt</translation>
    </message>
    <message>
      <source>{name} hidden</source>
      <translation>{name}: verborgen</translation>
    </message>
    <message>
      <source>Scene {n}: {title}</source>
      <translation>Szene {n}: {title}</translation>
    </message>
    <message>
      <source>left off</source>
      <translation>links ab</translation>
    </message>
    <message>
      <source>right off</source>
      <translation>rechts ab</translation>
    </message>
    <message>
      <source>off</source>
      <translation>ab</translation>
    </message>
    <message>
      <source>Peel to stratum {n}, {name}</source>
      <translation>Abtragen bis Schicht {n}, {name}</translation>
    </message>
    <message>
      <source>Show {name} alone</source>
      <translation>Nur {name} zeigen</translation>
    </message>
    <message>
      <source>Hide {name} alone</source>
      <translation>Nur {name} verbergen</translation>
    </message>
    <message>
      <source>{names} and {n} more</source>
      <translation>{names} und {n} weitere</translation>
    </message>
    <message>
      <source>Only</source>
      <translation>Nur</translation>
    </message>
    <message>
      <source>Hidden:</source>
      <translation>Verborgen:</translation>
    </message>
    <message>
      <source>See-through:</source>
      <translation>Durchscheinend:</translation>
    </message>
    <message>
      <source>Brought back</source>
      <translation>Zurückgeholt</translation>
    </message>
    <message>
      <source>Looking through what covers it</source>
      <translation>Blick durch das Verdeckende</translation>
    </message>
    <message>
      <source>Only the left side</source>
      <translation>Nur die linke Seite</translation>
    </message>
    <message>
      <source>Only the right side</source>
      <translation>Nur die rechte Seite</translation>
    </message>
    <message>
      <source>Both sides shown</source>
      <translation>Beide Seiten gezeigt</translation>
    </message>
    <message>
      <source>Peel to {name}</source>
      <translation>Abtragen bis: {name}</translation>
    </message>
    <message>
      <source>All back</source>
      <translation>Alles zurück</translation>
    </message>
    <message>
      <source>{name} see-through on or off</source>
      <translation>{name}: durchscheinend an oder aus</translation>
    </message>
    <message>
      <source>{name} alone on or off</source>
      <translation>{name}: allein an oder aus</translation>
    </message>
    <message>
      <source>No part picked</source>
      <translation>Kein Teil gewählt</translation>
    </message>
    <message>
      <source>Tap or click a part of the picture, or choose one under Search. Its name, attachments, nerve, artery and action are told here.</source>
      <translation>Einen Teil im Bild antippen oder anklicken oder unter „Suchen“ wählen. Name, Ansätze, Nerv, Arterie und Wirkung stehen dann hier.</translation>
    </message>
    <message>
      <source>Look through what covers it</source>
      <translation>Durch das Verdeckende blicken</translation>
    </message>
    <message>
      <source>Go to it</source>
      <translation>Hingehen</translation>
    </message>
    <message>
      <source>Other side</source>
      <translation>Andere Seite</translation>
    </message>
    <message>
      <source>Drag, arrow keys</source>
      <translation>Ziehen, Pfeiltasten</translation>
    </message>
    <message>
      <source>turn</source>
      <translation>drehen</translation>
    </message>
    <message>
      <source>Two fingers, Shift and drag</source>
      <translation>Zwei Finger, Umschalt und ziehen</translation>
    </message>
    <message>
      <source>move</source>
      <translation>verschieben</translation>
    </message>
    <message>
      <source>Wheel, pinch, + −</source>
      <translation>Mausrad, zwei Finger spreizen, + −</translation>
    </message>
    <message>
      <source>closer, further</source>
      <translation>näher, ferner</translation>
    </message>
    <message>
      <source>peel deeper, lay back</source>
      <translation>tiefer abtragen, zurücklegen</translation>
    </message>
    <message>
      <source>hide, see through, look through what covers it, alone, other side, go to it</source>
      <translation>verbergen, durchscheinend, durch das Verdeckende blicken, allein, andere Seite, hingehen</translation>
    </message>
    <message>
      <source>next step, step before</source>
      <translation>nächster Schritt, Schritt davor</translation>
    </message>
    <message>
      <source>1 to 8</source>
      <translation>1 bis 8</translation>
    </message>
    <message>
      <source>views</source>
      <translation>Ansichten</translation>
    </message>
    <message>
      <source>search</source>
      <translation>suchen</translation>
    </message>
    <message>
      <source>all back, undo</source>
      <translation>alles zurück, rückgängig</translation>
    </message>
    <message>
      <source>{name}: laid back</source>
      <translation>{name}: zurückgelegt</translation>
    </message>
    <message>
      <source>Lay it back on both sides</source>
      <translation>Beidseits zurücklegen</translation>
    </message>
    <message>
      <source>Lay it back on the left</source>
      <translation>Links zurücklegen</translation>
    </message>
    <message>
      <source>Lay it back on the right</source>
      <translation>Rechts zurücklegen</translation>
    </message>
    <message>
      <source>{name}: done</source>
      <translation>{name}: getan</translation>
    </message>
    <message>
      <source>Do it on both sides</source>
      <translation>Beidseits tun</translation>
    </message>
    <message>
      <source>Do it on the left</source>
      <translation>Links tun</translation>
    </message>
    <message>
      <source>Do it on the right</source>
      <translation>Rechts tun</translation>
    </message>
    <message>
      <source>“{title}”</source>
      <translation>„{title}“</translation>
    </message>
    <message>
      <source>First, on the left: {steps}.</source>
      <translation>Zuerst, links: {steps}.</translation>
    </message>
    <message>
      <source>First, on the right: {steps}.</source>
      <translation>Zuerst, rechts: {steps}.</translation>
    </message>
    <message>
      <source>{name}: done with all before it</source>
      <translation>{name}: getan, mit allem davor</translation>
    </message>
    <message>
      <source>Do all before it, then this</source>
      <translation>Alles davor tun, dann dies</translation>
    </message>
    <message>
      <source>{name}: done anyway</source>
      <translation>{name}: trotzdem getan</translation>
    </message>
    <message>
      <source>Keep, not to be cut</source>
      <translation>Schonen, nicht schneiden</translation>
    </message>
    <message>
      <source>✓ done</source>
      <translation>✓ getan</translation>
    </message>
    <message>
      <source>– later</source>
      <translation>– später</translation>
    </message>
    <message>
      <source>○ open</source>
      <translation>○ offen</translation>
    </message>
    <message>
      <source>Step {n} of {count}</source>
      <translation>Schritt {n} von {count}</translation>
    </message>
    <message>
      <source>, optional</source>
      <translation>, freiwillig</translation>
    </message>
    <message>
      <source>Step {n}: {title}. {words}</source>
      <translation>Schritt {n}: {title}. {words}</translation>
    </message>
    <message>
      <source>{n} found</source>
      <translation>{n} gefunden</translation>
    </message>
    <message>
      <source>Nothing is called that</source>
      <translation>So heißt hier nichts</translation>
    </message>
    <message>
      <source>stratum {n}</source>
      <translation>Schicht {n}</translation>
    </message>
    <message>
      <source>Choose a scene, or go through them in order.</source>
      <translation>Eine Szene wählen oder der Reihe nach durchgehen.</translation>
    </message>
    <message>
      <source>Sources of the facts</source>
      <translation>Quellen der Angaben</translation>
    </message>
    <message>
      <source>Licences</source>
      <translation>Lizenzen</translation>
    </message>
    <message>
      <source>About this file</source>
      <translation>Über diese Datei</translation>
    </message>
    <message>
      <source>To the text</source>
      <translation>Zum Text</translation>
    </message>
    <message>
      <source>Side that is worked on</source>
      <translation>Seite, auf der gearbeitet wird</translation>
    </message>
    <message>
      <source>Undo (Ctrl+Z)</source>
      <translation>Rückgängig (Strg+Z)</translation>
    </message>
    <message>
      <source>All back (A)</source>
      <translation>Alles zurück (A)</translation>
    </message>
    <message>
      <source>Dark (D)</source>
      <translation>Dunkel (D)</translation>
    </message>
    <message>
      <source>Strata, skin first</source>
      <translation>Schichten, die Haut zuerst</translation>
    </message>
    <message>
      <source>One stratum back ([)</source>
      <translation>Eine Schicht zurück ([)</translation>
    </message>
    <message>
      <source>Lay one stratum back</source>
      <translation>Eine Schicht zurücklegen</translation>
    </message>
    <message>
      <source>One stratum deeper (])</source>
      <translation>Eine Schicht tiefer (])</translation>
    </message>
    <message>
      <source>Peel one stratum deeper</source>
      <translation>Eine Schicht tiefer abtragen</translation>
    </message>
    <message>
      <source>Picture</source>
      <translation>Bild</translation>
    </message>
    <message>
      <source>Views</source>
      <translation>Ansichten</translation>
    </message>
    <message>
      <source>turnable picture</source>
      <translation>drehbares Bild</translation>
    </message>
    <message>
      <source>The back. Arrow keys turn, plus and minus come closer and go away, brackets peel. All parts can also be chosen from the list under Search.</source>
      <translation>Der Rücken. Pfeiltasten drehen, Plus und Minus gehen näher und ferner, eckige Klammern tragen ab. Alle Teile lassen sich auch aus der Liste unter „Suchen“ wählen.</translation>
    </message>
    <message>
      <source>This page could not be opened:</source>
      <translation>Diese Seite ließ sich nicht öffnen:</translation>
    </message>
    <message>
      <source>it needs a browser of 2023 or later (Firefox 113, Chromium 80, Safari 16.4)</source>
      <translation>sie braucht einen Browser ab 2023 (Firefox 113, Chromium 80, Safari 16.4)</translation>
    </message>
    <message>
      <source>The back is being laid out …</source>
      <translation>Der Rücken wird aufgebaut …</translation>
    </message>
    <message>
      <source>Text</source>
      <translation>Text</translation>
    </message>
    <message>
      <source>About</source>
      <translation>Über</translation>
    </message>
    <message>
      <source>Any name, English or Latin</source>
      <translation>Beliebiger Name, deutsch, englisch oder lateinisch</translation>
    </message>
    <message>
      <source>Before you begin</source>
      <translation>Vor dem Anfang</translation>
    </message>
    <message>
      <source>I have read this</source>
      <translation>Gelesen</translation>
    </message>
    <message>
      <source>This page needs JavaScript, which is inside this file; nothing is fetched.</source>
      <translation>Diese Seite braucht JavaScript, das in dieser Datei steht; es wird nichts geladen.</translation>
    </message>
    <message>
      <source>Take away, and go on</source>
      <translation>Wegnehmen und weiter</translation>
    </message>
    <message>
      <source>&amp;Short of the canal, the rest bluntly</source>
      <translation>&amp;Vor dem Kanal halten, den Rest stumpf</translation>
    </message>
    <message>
      <source>The saw stops in the bone; what is left of it is broken and lifted off</source>
      <translation>Die Säge hält im Knochen an; was davon bleibt, wird gebrochen und abgehoben</translation>
    </message>
    <message>
      <source>Lifted with &amp;forceps first</source>
      <translation>Zuerst mit der &amp;Pinzette angehoben</translation>
    </message>
    <message>
      <source>The sheet is drawn away from what it covers: the scissors cut only it</source>
      <translation>Das Blatt wird von dem abgezogen, was es bedeckt: Die Schere schneidet nur dieses</translation>
    </message>
    <message>
      <source>{title}: hides {share}, {mm} mm deep, {detail}</source>
      <translation>{title}: verdeckt {share}, {mm} mm tief, {detail}</translation>
    </message>
    <message>
      <source>Kept in {file}</source>
      <translation>Gespeichert in {file}</translation>
    </message>
    <message>
      <source>{count} scene</source>
      <translation>{count} Szene</translation>
    </message>
    <message>
      <source>{count} scenes</source>
      <translation>{count} Szenen</translation>
    </message>
    <message>
      <source>{place} (mm from the skin)</source>
      <translation>{place} (mm von der Haut aus)</translation>
    </message>
    <message>
      <source>back</source>
      <translation>Rücken</translation>
    </message>
    <message>
      <source>vertebra</source>
      <translation>Wirbel</translation>
    </message>
    <message>
      <source>rib</source>
      <translation>Rippe</translation>
    </message>
    <message>
      <source>Whole section in the picture: 0, or a double click</source>
      <translation>Ganzer Schnitt im Bild: 0 oder Doppelklick</translation>
    </message>
    <message>
      <source>Untitled talk</source>
      <translation>Vortrag ohne Titel</translation>
    </message>
    <message>
      <source>Letters: ISO 9241-3 asks for 16 arc minutes, 20 to 22 are better. Contrast: WCAG 2.2.</source>
      <translation>Buchstaben: ISO 9241-3 verlangt 16 Bogenminuten, 20 bis 22 sind besser. Kontrast: WCAG 2.2.</translation>
    </message>
    <message>
      <source>Working states</source>
      <translation>Arbeitsstände</translation>
    </message>
    <message>
      <source>Pictures</source>
      <translation>Bilder</translation>
    </message>
    <message>
      <source>Click the next place.</source>
      <translation>Die nächste Stelle anklicken.</translation>
    </message>
    <message>
      <source>Click where the cut begins.</source>
      <translation>Anklicken, wo der Schnitt beginnt.</translation>
    </message>
    <message>
      <source>Drawings</source>
      <translation>Zeichnungen</translation>
    </message>
    <message>
      <source>Folder for the meshes</source>
      <translation>Ordner für die Netze</translation>
    </message>
    <message>
      <source>Talks</source>
      <translation>Vorträge</translation>
    </message>
    <message>
      <source>All files</source>
      <translation>Alle Dateien</translation>
    </message>
    <message>
      <source>Spine {level}, {mm} mm {side}</source>
      <translation>Dornfortsatz {level}, {mm} mm {side}</translation>
    </message>
    <message>
      <source>{title}: enters at {enters} mm, {thick} mm thick, leaves at {leaves} mm</source>
      <translation>{title}: beginnt bei {enters} mm, {thick} mm dick, endet bei {leaves} mm</translation>
    </message>
    <message>
      <source>The step that cuts this layer</source>
      <translation>Der Schritt, der diese Schicht schneidet</translation>
    </message>
    <message>
      <source>Export results</source>
      <translation>Ergebnisse ausgeben</translation>
    </message>
    <message>
      <source>How to begin</source>
      <translation>Der Anfang</translation>
    </message>
    <message>
      <source>drawn thicker; published {mm} mm</source>
      <translation>dicker gezeichnet; veröffentlicht {mm} mm</translation>
    </message>
    <message>
      <source>drawn thicker</source>
      <translation>dicker gezeichnet</translation>
    </message>
    <message>
      <source>Teaching model: depths are not for needle or surgical guidance.</source>
      <translation>Lehrmodell: Tiefen sind nicht zur Führung von Nadel oder Messer.</translation>
    </message>
    <message>
      <source>Save</source>
      <translation>Speichern</translation>
    </message>
    <message>
      <source>Don't save</source>
      <translation>Nicht speichern</translation>
    </message>
    <message>
      <source>It holds no names and leaves this machine only when you send it.</source>
      <translation>Es enthält keine Namen und verlässt diesen Rechner nur, wenn Sie es verschicken.</translation>
    </message>
    <message>
      <source>What went wrong is written to</source>
      <translation>Was misslang, steht in</translation>
    </message>
    <message>
      <source> or </source>
      <translation> oder </translation>
    </message>
    <message>
      <source>While presenting</source>
      <translation>Beim Vorführen</translation>
    </message>
    <message>
      <source>On the depth rail</source>
      <translation>Auf der Tiefenleiste</translation>
    </message>
    <message>
      <source>0 to 9</source>
      <translation>0 bis 9</translation>
    </message>
    <message>
      <source>Down, Up</source>
      <translation>Abwärts, aufwärts</translation>
    </message>
    <message>
      <source>Peel one stratum, or lay one back</source>
      <translation>Eine Schicht abtragen oder zurücklegen</translation>
    </message>
    <message>
      <source>Home, End</source>
      <translation>Pos1, Ende</translation>
    </message>
    <message>
      <source>Whole back; down to the bones</source>
      <translation>Ganzer Rücken; bis auf die Knochen</translation>
    </message>
    <message>
      <source>Ctrl+Down, Ctrl+Up</source>
      <translation>Strg und abwärts, aufwärts</translation>
    </message>
    <message>
      <source>Choose a band</source>
      <translation>Ein Band wählen</translation>
    </message>
    <message>
      <source>Space</source>
      <translation>Leertaste</translation>
    </message>
    <message>
      <source>Take the chosen band out, or put it back</source>
      <translation>Das gewählte Band herausnehmen oder zurücklegen</translation>
    </message>
    <message>
      <source>Wheel</source>
      <translation>Mausrad</translation>
    </message>
    <message>
      <source>Go to the scene of that number</source>
      <translation>Zur Szene dieser Zahl</translation>
    </message>
    <message>
      <source>Next scene; Space pauses and plays a review</source>
      <translation>Nächste Szene; die Leertaste hält einen Durchgang an und setzt ihn fort</translation>
    </message>
    <message>
      <source>Scene before</source>
      <translation>Szene davor</translation>
    </message>
    <message>
      <source>First scene</source>
      <translation>Erste Szene</translation>
    </message>
    <message>
      <source>Last scene</source>
      <translation>Letzte Szene</translation>
    </message>
    <message>
      <source>Go to the number typed; else back to the scene</source>
      <translation>Zur getippten Zahl; sonst zurück zur Szene</translation>
    </message>
    <message>
      <source>Back to the scene after a question</source>
      <translation>Nach einer Frage zurück zur Szene</translation>
    </message>
    <message>
      <source>Blank screen, and back</source>
      <translation>Schwarzes Bild und zurück</translation>
    </message>
    <message>
      <source>White screen, and back</source>
      <translation>Weißes Bild und zurück</translation>
    </message>
    <message>
      <source>Drawing pen on or off</source>
      <translation>Zeichenstift an oder aus</translation>
    </message>
    <message>
      <source>Clear what was drawn</source>
      <translation>Zeichnung löschen</translation>
    </message>
    <message>
      <source>Spotlight on the pointer</source>
      <translation>Lichtkreis am Zeiger</translation>
    </message>
    <message>
      <source>Fixed view before</source>
      <translation>Feste Ansicht davor</translation>
    </message>
    <message>
      <source>Next fixed view</source>
      <translation>Nächste feste Ansicht</translation>
    </message>
    <message>
      <source>See through the part that is picked</source>
      <translation>Den gewählten Teil durchscheinen lassen</translation>
    </message>
    <message>
      <source>Hide the part that is picked</source>
      <translation>Den gewählten Teil verbergen</translation>
    </message>
    <message>
      <source>Labels, seven at most</source>
      <translation>Beschriftung, höchstens sieben</translation>
    </message>
    <message>
      <source>Review faster</source>
      <translation>Durchgang schneller</translation>
    </message>
    <message>
      <source>Review slower</source>
      <translation>Durchgang langsamer</translation>
    </message>
    <message>
      <source>End: first what lies over the picture, then presenting</source>
      <translation>Ende: erst was über dem Bild liegt, dann das Vorführen</translation>
    </message>
    <message>
      <source>The model is not ready.</source>
      <translation>Das Modell ist noch nicht fertig.</translation>
    </message>
    <message>
      <source>Log file</source>
      <translation>Protokoll</translation>
    </message>
    <message>
      <source>A back computed from a few numbers, to be peeled from skin to bone. MIT licence.</source>
      <translation>Ein aus wenigen Zahlen berechneter Rücken, abzutragen von der Haut bis zum Knochen. MIT-Lizenz.</translation>
    </message>
    <message>
      <source>The program never opens a network connection.</source>
      <translation>Das Programm stellt nie eine Netzverbindung her.</translation>
    </message>
    <message>
      <source>Built on:</source>
      <translation>Gebaut auf:</translation>
    </message>
    <message>
      <source>{mm} mm left</source>
      <translation>{mm} mm links</translation>
    </message>
    <message>
      <source>{mm} mm right</source>
      <translation>{mm} mm rechts</translation>
    </message>
    <message>
      <source>{mm} mm behind S1</source>
      <translation>{mm} mm hinter S1</translation>
    </message>
    <message>
      <source>{mm} mm in front of S1</source>
      <translation>{mm} mm vor S1</translation>
    </message>
    <message>
      <source>{mm} mm above {place}</source>
      <translation>{mm} mm über {place}</translation>
    </message>
    <message>
      <source>{mm} mm below {place}</source>
      <translation>{mm} mm unter {place}</translation>
    </message>
    <message>
      <source>disc {levels}</source>
      <translation>Bandscheibe {levels}</translation>
    </message>
    <message>
      <source>Which step of the plan meets it</source>
      <translation>Welcher Schritt des Plans auf sie trifft</translation>
    </message>
    <message>
      <source>What a cut would lose</source>
      <translation>Was ein Schnitt kosten würde</translation>
    </message>
    <message>
      <source>Which step of the plan takes the tagged structure off, or folds it away?</source>
      <translation>Welcher Schritt des Plans nimmt die markierte Struktur weg oder klappt sie um?</translation>
    </message>
    <message>
      <source>Which step of the plan brings the tagged structure into view?</source>
      <translation>Welcher Schritt des Plans legt die markierte Struktur frei?</translation>
    </message>
    <message>
      <source>A blade follows the white line, {mm} mm deep, in the layer with the tag. Which of these would be lost?</source>
      <translation>Eine Klinge folgt der weißen Linie, {mm} mm tief, in der markierten Schicht. Was davon ginge verloren?</translation>
    </message>
    <message>
      <source>Exa&amp;mination on</source>
      <translation>Prü&amp;fung am</translation>
    </message>
    <message>
      <source>Day of the examination</source>
      <translation>Tag der Prüfung</translation>
    </message>
    <message>
      <source>What would come again after it comes before it</source>
      <translation>Was erst danach wiederkäme, kommt vorher</translation>
    </message>
    <message>
      <source>spinal roots</source>
      <translation>Wurzeln der Spinalnerven</translation>
    </message>
    <message>
      <source>cluneal nerves</source>
      <translation>Nn. clunium</translation>
    </message>
    <message>
      <source>{kind} section, {place}</source>
      <translation>{kind} geschnitten, {place}</translation>
    </message>
    <message>
      <source>, tilted {nod}° and {lean}°</source>
      <translation>, geneigt um {nod}° und {lean}°</translation>
    </message>
    <message>
      <source>Teaching model – not for needle or surgical guidance</source>
      <translation>Lehrmodell – nicht zur Führung von Nadel oder Messer</translation>
    </message>
    <message>
      <source>Between the parts: loose tissue and fat, not modelled</source>
      <translation>Zwischen den Teilen: lockeres Gewebe und Fett, nicht modelliert</translation>
    </message>
    <message>
      <source>Pale with a dark edge: nerve. Dark with a pale edge: vessel; both drawn wider than they are.</source>
      <translation>Hell mit dunklem Rand: Nerv. Dunkel mit hellem Rand: Gefäß; beide breiter gezeichnet, als sie sind.</translation>
    </message>
    <message>
      <source>How much of it is in view</source>
      <translation>Wie viel davon zu sehen ist</translation>
    </message>
    <message>
      <source>Message</source>
      <translation>Meldung</translation>
    </message>
    <message>
      <source>Hidden, further ones</source>
      <translation>Weitere verborgene</translation>
    </message>
    <message>
      <source>First back lab, left side</source>
      <translation>Erster Präparierkurs am Rücken, linke Seite</translation>
    </message>
    <message>
      <source>The back before the first cut</source>
      <translation>Der Rücken vor dem ersten Schnitt</translation>
    </message>
    <message>
      <source>Count levels from above and from below</source>
      <translation>Höhen von oben und von unten zählen</translation>
    </message>
    <message>
      <source>Welcome. One minute of quiet for the donor first, in the form your course uses.</source>
      <translation>Willkommen. Zuerst eine Minute Stille für die Spenderin oder den Spender, wie es in Ihrem Kurs üblich ist.</translation>
    </message>
    <message>
      <source>This is the skin of the back. On the picture are the landmarks you feel: the protuberance of the skull, C7, the spine of the shoulder blade and its lower angle, the crest of the hip bone.</source>
      <translation>Das ist die Haut des Rückens. Im Bild stehen die tastbaren Punkte: die Protuberantia am Schädel, C7, Spina und unterer Winkel des Schulterblatts, der Beckenkamm.</translation>
    </message>
    <message>
      <source>Ask: which spine is this? A rule of thumb is right to about one level; say plus or minus one.</source>
      <translation>Fragen Sie: Welcher Dornfortsatz ist das? Eine Faustregel stimmt auf etwa einen Wirbel; sagen Sie: plus oder minus einer.</translation>
    </message>
    <message>
      <source>The model stands. Your donor lies prone: left stays left, but the shoulder blade moves.</source>
      <translation>Das Modell steht. Auf dem Tisch liegt der Körper auf dem Bauch: Links bleibt links, aber das Schulterblatt verschiebt sich.</translation>
    </message>
    <message>
      <source>Skin only</source>
      <translation>Nur die Haut</translation>
    </message>
    <message>
      <source>Yellow fat in the cut: deep enough</source>
      <translation>Gelbes Fett im Schnitt: tief genug</translation>
    </message>
    <message>
      <source>The skin is turned on the left. Beneath it lies the superficial fascia: fat with fine nerves in it.</source>
      <translation>Links ist die Haut umgeschlagen. Darunter liegt die oberflächliche Faszie: Fett mit feinen Nerven darin.</translation>
    </message>
    <message>
      <source>Blade turned to the skin, fingers behind the blade. Over the crest and along the nuchal line stay shallow: the nerves are just there.</source>
      <translation>Die Schneide zur Haut, die Finger hinter die Klinge. Über dem Beckenkamm und entlang der Linea nuchalis flach bleiben: Genau dort liegen die Nerven.</translation>
    </message>
    <message>
      <source>The right side keeps its skin so that you can compare.</source>
      <translation>Rechts bleibt die Haut, damit Sie vergleichen können.</translation>
    </message>
    <message>
      <source>Threads in the fat</source>
      <translation>Fäden im Fett</translation>
    </message>
    <message>
      <source>Look for one or two, with a time limit</source>
      <translation>Einen oder zwei suchen, und nicht zu lange</translation>
    </message>
    <message>
      <source>What ran through the fat: the posterior cutaneous branch of each level near the midline, and over the crest the superior cluneal nerve and its neighbours.</source>
      <translation>Was durch das Fett zog: nahe der Mittellinie auf jeder Höhe der R. cutaneus posterior, über dem Beckenkamm die Nn. clunium superiores und ihre Nachbarn.</translation>
    </message>
    <message>
      <source>Up at the skull the occipital artery; the greater occipital nerve comes through near it.</source>
      <translation>Oben am Schädel die A. occipitalis; nahe bei ihr tritt der N. occipitalis major hindurch.</translation>
    </message>
    <message>
      <source>What is not found is reported, not hunted. Below is the deep fascia, a thin film here, white and strong over the loin: stop at white.</source>
      <translation>Was nicht gefunden wird, wird gemeldet, nicht gejagt. Darunter liegt die tiefe Faszie, hier ein dünnes Häutchen, über der Lende weiß und fest: bei Weiß aufhören.</translation>
    </message>
    <message>
      <source>The first sheet</source>
      <translation>Die erste Platte</translation>
    </message>
    <message>
      <source>Two muscles cover nearly all</source>
      <translation>Zwei Muskeln bedecken fast alles</translation>
    </message>
    <message>
      <source>Film off, along the fibres. Two muscles own the surface: trapezius above and latissimus dorsi below.</source>
      <translation>Das Häutchen ab, entlang der Fasern. Zwei Muskeln beherrschen die Oberfläche: oben der M. trapezius, unten der M. latissimus dorsi.</translation>
    </message>
    <message>
      <source>Over the loin latissimus dorsi is already tendon: the outer sheet of the thoracolumbar fascia. Do not lift what is white.</source>
      <translation>Über der Lende ist der M. latissimus dorsi schon Sehne: das äußere Blatt der Fascia thoracolumbalis. Was weiß ist, nicht anheben.</translation>
    </message>
    <message>
      <source>Find the two gaps with your finger: one at the lower angle of the shoulder blade, one at the crest.</source>
      <translation>Tasten Sie die beiden Lücken: eine am unteren Winkel des Schulterblatts, eine am Beckenkamm.</translation>
    </message>
    <message>
      <source>Trapezius: what rides on it</source>
      <translation>Trapezius: was mit ihm geht</translation>
    </message>
    <message>
      <source>The nerve stays on the muscle</source>
      <translation>Der Nerv bleibt am Muskel</translation>
    </message>
    <message>
      <source>Seen through the left trapezius: the accessory nerve on its deep face, with the transverse cervical artery beside it.</source>
      <translation>Durch den linken M. trapezius gesehen: der N. accessorius auf seiner Unterseite, daneben die A. transversa cervicis.</translation>
    </message>
    <message>
      <source>The cut runs a finger's width from the spines, from T12 upward, a finger beneath all the way. So the bundle stays on the flap.</source>
      <translation>Der Schnitt läuft einen Fingerbreit neben den Dornfortsätzen, von T12 aufwärts, stets mit einem Finger darunter. So bleibt das Gefäß-Nerven-Bündel am Lappen.</translation>
    </message>
    <message>
      <source>Too deep? Slanting fibres stuck to the palm side of your fingers are the rhomboids.</source>
      <translation>Zu tief? Schräge Fasern an der Hohlhandseite Ihrer Finger sind die Mm. rhomboidei.</translation>
    </message>
    <message>
      <source>Half way: look at its deep face</source>
      <translation>Halb geklappt: die Unterseite ansehen</translation>
    </message>
    <message>
      <source>Lift, do not pull: the nerve is under tension</source>
      <translation>Heben, nicht ziehen: Der Nerv ist gespannt</translation>
    </message>
    <message>
      <source>Stop half way and let everyone look at the deep face of trapezius. The flap turns on its attachment to scapula and clavicle, from the midline outward.</source>
      <translation>Auf halbem Weg anhalten und alle die Unterseite des M. trapezius ansehen lassen. Der Lappen dreht sich um seinen Ansatz an Scapula und Clavicula, von der Mittellinie nach außen.</translation>
    </message>
    <message>
      <source>The accessory nerve comes along on the flap: lift, do not pull.</source>
      <translation>Der N. accessorius kommt mit dem Lappen mit: heben, nicht ziehen.</translation>
    </message>
    <message>
      <source>Clean the bundle now, before the flap is laid flat.</source>
      <translation>Das Bündel jetzt säubern, bevor der Lappen flach liegt.</translation>
    </message>
    <message>
      <source>Under trapezius</source>
      <translation>Unter dem Trapezius</translation>
    </message>
    <message>
      <source>Three muscles pull on the shoulder blade</source>
      <translation>Drei Muskeln ziehen am Schulterblatt</translation>
    </message>
    <message>
      <source>Trapezius is folded away. From above down: levator scapulae, rhomboid minor, rhomboid major, all to the medial border.</source>
      <translation>Der M. trapezius ist umgeklappt. Von oben nach unten: M. levator scapulae, M. rhomboideus minor, M. rhomboideus major, alle zum Margo medialis.</translation>
    </message>
    <message>
      <source>Above the spine of the shoulder blade lies supraspinatus.</source>
      <translation>Über der Spina scapulae liegt der M. supraspinatus.</translation>
    </message>
    <message>
      <source>Minor and major are told apart where they are attached, not by the gap between them: often there is none.</source>
      <translation>Minor und major unterscheidet man an ihren Ansätzen, nicht an der Lücke zwischen ihnen: Oft gibt es keine.</translation>
    </message>
    <message>
      <source>The same, from where you stand</source>
      <translation>Dasselbe von Ihrem Platz aus</translation>
    </message>
    <message>
      <source>Donor prone, you at the left side</source>
      <translation>Bauchlage, Sie stehen links</translation>
    </message>
    <message>
      <source>The same depth seen from the table. You stand at the donor's left: the head is to your left hand.</source>
      <translation>Dieselbe Tiefe vom Tisch aus gesehen. Sie stehen links: Der Kopf liegt zu Ihrer linken Hand.</translation>
    </message>
    <message>
      <source>Point at rhomboid major here and in the small upright picture: it is one place.</source>
      <translation>Zeigen Sie auf den M. rhomboideus major, hier und im kleinen stehenden Bild: Es ist dieselbe Stelle.</translation>
    </message>
    <message>
      <source>The model keeps the pose of standing: on the table the shoulder blade lies lower with the arms forward, higher with the arms at the sides.</source>
      <translation>Das Modell behält die Haltung des Stehens: Auf dem Tisch steht das Schulterblatt tiefer, wenn die Arme nach vorn liegen, höher, wenn sie an den Seiten liegen.</translation>
    </message>
    <message>
      <source>Latissimus and what hides beneath</source>
      <translation>Latissimus und was sich darunter verbirgt</translation>
    </message>
    <message>
      <source>Same slope beneath, and paper thin</source>
      <translation>Darunter dieselbe Neigung, dünn wie Papier</translation>
    </message>
    <message>
      <source>Latissimus dorsi is folded outward. Directly beneath, with the same slope of fibres, lies serratus posterior inferior.</source>
      <translation>Der M. latissimus dorsi ist nach außen geklappt. Unmittelbar darunter, mit gleich geneigten Fasern, liegt der M. serratus posterior inferior.</translation>
    </message>
    <message>
      <source>Its tendon and the thoracolumbar fascia are one near the midline, so the cut goes further out, through flesh.</source>
      <translation>Nahe der Mittellinie sind seine Sehne und die Fascia thoracolumbalis eins; darum geht der Schnitt weiter außen durch das Fleisch.</translation>
    </message>
    <message>
      <source>Nerve and vessels come from the arm: stop before the armpit.</source>
      <translation>Nerv und Gefäße kommen vom Arm: vor der Achsel aufhören.</translation>
    </message>
    <message>
      <source>Rhomboids: cut at the spines</source>
      <translation>Rhomboidei: an den Dornfortsätzen schneiden</translation>
    </message>
    <message>
      <source>At the border you would lose the bundle</source>
      <translation>Am Margo medialis ginge das Bündel verloren</translation>
    </message>
    <message>
      <source>Through rhomboid minor and rhomboid major you see the dorsal scapular nerve along the medial border, with the dorsal scapular artery.</source>
      <translation>Durch M. rhomboideus minor und major hindurch sieht man am Margo medialis den N. dorsalis scapulae mit der A. dorsalis scapulae.</translation>
    </message>
    <message>
      <source>So the line of cut is at the spines, from below upward, and the flap turns on the border like a page.</source>
      <translation>Darum liegt die Schnittlinie an den Dornfortsätzen, von unten nach oben, und der Lappen klappt am Margo medialis wie eine Buchseite.</translation>
    </message>
    <message>
      <source>Ask the class: what is lost when you cut at the border?</source>
      <translation>Fragen Sie die Gruppe: Was geht verloren, wenn man am Margo medialis schneidet?</translation>
    </message>
    <message>
      <source>Thin as paper</source>
      <translation>Dünn wie Papier</translation>
    </message>
    <message>
      <source>It comes away with the rhomboids if you go too deep</source>
      <translation>Zu tief, und er geht mit den Rhomboidei ab</translation>
    </message>
    <message>
      <source>Serratus posterior superior, half muscle and half sheet tendon, runs down and out to the upper ribs.</source>
      <translation>Der M. serratus posterior superior, halb Muskel, halb Sehnenplatte, zieht nach unten außen zu den oberen Rippen.</translation>
    </message>
    <message>
      <source>Its partner serratus posterior inferior runs up and out: the two slopes face one another.</source>
      <translation>Sein Partner, der M. serratus posterior inferior, zieht nach oben außen: Die beiden Neigungen stehen gegeneinander.</translation>
    </message>
    <message>
      <source>Lift it to see it, cut only if your course does.</source>
      <translation>Zum Ansehen anheben; durchtrennen nur, wenn Ihr Kurs es tut.</translation>
    </message>
    <message>
      <source>Splenius slants the other way</source>
      <translation>Splenius ist anders geneigt</translation>
    </message>
    <message>
      <source>Up and out, to the side of the skull</source>
      <translation>Nach oben außen, zur Seite des Schädels</translation>
    </message>
    <message>
      <source>Splenius capitis and splenius cervicis wrap the column of the neck like a bandage.</source>
      <translation>M. splenius capitis und M. splenius cervicis umwickeln die Nackensäule wie ein Verband.</translation>
    </message>
    <message>
      <source>Fibres up and out: splenius. Fibres straight up beneath: the next layer.</source>
      <translation>Fasern nach oben außen: Splenius. Darunter Fasern gerade nach oben: die nächste Schicht.</translation>
    </message>
    <message>
      <source>The greater occipital nerve comes out near the inner edge higher up. Look before you cut the top.</source>
      <translation>Weiter oben tritt nahe dem Innenrand der N. occipitalis major aus. Erst suchen, dann oben schneiden.</translation>
    </message>
    <message>
      <source>The white of the loin</source>
      <translation>Das Weiß der Lende</translation>
    </message>
    <message>
      <source>Lift it, then nick it</source>
      <translation>Erst anheben, dann einschneiden</translation>
    </message>
    <message>
      <source>The thoracolumbar fascia covers the long columns like a sleeve. Two finger-widths from the midline lift a fold, nick it, and open it upward and downward.</source>
      <translation>Die Fascia thoracolumbalis umhüllt die langen Säulen wie ein Ärmel. Zwei Fingerbreit neben der Mittellinie eine Falte anheben, einschneiden und nach oben und unten öffnen.</translation>
    </message>
    <message>
      <source>Beneath is a second white sheet with its fibres straight up: stop there.</source>
      <translation>Darunter liegt eine zweite weiße Platte mit gerade aufsteigenden Fasern: dort aufhören.</translation>
    </message>
    <message>
      <source>Three columns</source>
      <translation>Drei Säulen</translation>
    </message>
    <message>
      <source>From the side inward: ribs, transverse processes, spines</source>
      <translation>Von außen: Rippen, Querfortsätze, Dornfortsätze</translation>
    </message>
    <message>
      <source>From lateral to medial: iliocostalis thoracis, longissimus thoracis, spinalis thoracis. Start in mid-chest where the groove of fat is clearest; below they are one mass.</source>
      <translation>Von lateral nach medial: M. iliocostalis thoracis, M. longissimus thoracis, M. spinalis thoracis. In der Mitte der Brust beginnen, wo der Fettstreifen am deutlichsten ist; weiter unten sind sie eine Masse.</translation>
    </message>
    <message>
      <source>Over the loin the erector spinae aponeurosis stays.</source>
      <translation>Über der Lende bleibt die Aponeurose des M. erector spinae.</translation>
    </message>
    <message>
      <source>In the outer groove comes the lateral branch of a posterior ramus: keep one.</source>
      <translation>In der äußeren Rinne kommt der R. lateralis eines R. posterior hervor: einen schonen.</translation>
    </message>
    <message>
      <source>Up in the neck</source>
      <translation>Oben im Nacken</translation>
    </message>
    <message>
      <source>A nerve passes through the muscle</source>
      <translation>Ein Nerv zieht durch den Muskel</translation>
    </message>
    <message>
      <source>Semispinalis capitis is the thick strap beside the midline; longissimus capitis is the narrow one beside it, to the mastoid.</source>
      <translation>Der M. semispinalis capitis ist der dicke Strang neben der Mittellinie; der schmale daneben, zum Proc. mastoideus, ist der M. longissimus capitis.</translation>
    </message>
    <message>
      <source>The greater occipital nerve comes out through semispinalis. Free it first, then cut above it and turn the muscle down.</source>
      <translation>Der N. occipitalis major tritt durch den M. semispinalis aus. Erst ihn freilegen, dann oberhalb schneiden und den Muskel nach unten klappen.</translation>
    </message>
    <message>
      <source>The triangle under the skull</source>
      <translation>Das Dreieck unter dem Schädel</translation>
    </message>
    <message>
      <source>No blade in the triangle</source>
      <translation>Keine Klinge im Dreieck</translation>
    </message>
    <message>
      <source>Three borders: rectus capitis posterior major, obliquus capitis superior, obliquus capitis inferior.</source>
      <translation>Drei Ränder: M. rectus capitis posterior major, M. obliquus capitis superior, M. obliquus capitis inferior.</translation>
    </message>
    <message>
      <source>In the floor the vertebral artery lies on the arch of the atlas, and the suboccipital nerve comes out between them.</source>
      <translation>Im Boden liegt die A. vertebralis auf dem Atlasbogen; zwischen beiden tritt der N. suboccipitalis aus.</translation>
    </message>
    <message>
      <source>Take the clot of the veins piece by piece with blunt tools.</source>
      <translation>Das Blutgerinnsel der Venen Stück für Stück mit stumpfem Instrument entfernen.</translation>
    </message>
    <message>
      <source>The slanting group</source>
      <translation>Die schrägen Muskeln</translation>
    </message>
    <message>
      <source>Fibres up and inward: you are there</source>
      <translation>Fasern nach oben innen: Sie sind da</translation>
    </message>
    <message>
      <source>The columns are drawn aside. In the gutter beside the spines: semispinalis thoracis over multifidus thoracis, and in the loin multifidus lumborum, as thick as a thumb.</source>
      <translation>Die Säulen sind zur Seite gezogen. In der Rinne neben den Dornfortsätzen: der M. semispinalis thoracis über dem M. multifidus thoracis, in der Lende der M. multifidus lumborum, dick wie ein Daumen.</translation>
    </message>
    <message>
      <source>One back, two depths</source>
      <translation>Ein Rücken, zwei Tiefen</translation>
    </message>
    <message>
      <source>What you see left lies under what you see right</source>
      <translation>Was links zu sehen ist, liegt unter dem von rechts</translation>
    </message>
    <message>
      <source>Left the slanting group, right the first sheet. Walk your eyes straight across at one level and say all the layers in between.</source>
      <translation>Links die schrägen Muskeln, rechts die erste Platte. Gehen Sie mit den Augen auf einer Höhe quer hinüber und nennen Sie alle Schichten dazwischen.</translation>
    </message>
    <message>
      <source>On the right trapezius and latissimus dorsi; on the left semispinalis thoracis and multifidus lumborum.</source>
      <translation>Rechts M. trapezius und M. latissimus dorsi; links M. semispinalis thoracis und M. multifidus lumborum.</translation>
    </message>
    <message>
      <source>The canal, with staff</source>
      <translation>Der Kanal, mit Lehrkraft</translation>
    </message>
    <message>
      <source>Eye and breathing protection; supervised only</source>
      <translation>Augen- und Atemschutz; nur unter Aufsicht</translation>
    </message>
    <message>
      <source>Only in some courses, and only under supervision: the arches lifted as one strip, fat and veins cleared, dura opened in the midline.</source>
      <translation>Nur in manchen Kursen und nur unter Aufsicht: die Wirbelbögen als ein Streifen abgehoben, Fett und Venen entfernt, die Dura in der Mittellinie geöffnet.</translation>
    </message>
    <message>
      <source>The spinal cord ends near the first lumbar level; below it hang the roots as the cauda equina.</source>
      <translation>Das Rückenmark endet nahe dem ersten Lendenwirbel; darunter hängen die Wurzeln als Cauda equina.</translation>
    </message>
    <message>
      <source>The picture takes whole vertebrae out where the saw takes only the arches.</source>
      <translation>Im Bild fehlen ganze Wirbel, wo die Säge nur die Bögen nimmt.</translation>
    </message>
    <message>
      <source>Today: stop here, keep these</source>
      <translation>Heute: hier aufhören, das bleibt</translation>
    </message>
    <message>
      <source>Keep list intact, blades counted, donor covered</source>
      <translation>Alles Geschonte ganz, Klingen gezählt, Körper bedeckt</translation>
    </message>
    <message>
      <source>Stop point for today on the left. To be kept: the dorsal scapular nerve, serratus posterior superior, and the thoracolumbar fascia whole.</source>
      <translation>Bis hierher heute auf der linken Seite. Zu schonen: der N. dorsalis scapulae, der M. serratus posterior superior und die ganze Fascia thoracolumbalis.</translation>
    </message>
    <message>
      <source>Blades counted in, tissue with its donor, donor covered. Local rules come first.</source>
      <translation>Klingen gezählt, Gewebe bei seinem Körper, Körper bedeckt. Die Regeln vor Ort gehen vor.</translation>
    </message>
    <message>
      <source>Teaching model: never for needle or surgical guidance.</source>
      <translation>Lehrmodell: nie zur Führung von Nadeln oder zur Operation.</translation>
    </message>
    <message>
      <source>“{title}” with {count} scenes was not saved to {file}.</source>
      <translation>„{title}“ mit {count} Szenen wurde nicht in {file} gespeichert.</translation>
    </message>
    <message>
      <source>“{title}” with {count} scenes was not saved.</source>
      <translation>„{title}“ mit {count} Szenen wurde nicht gespeichert.</translation>
    </message>
    <message>
      <source>Bring it back</source>
      <translation>Wiederherstellen</translation>
    </message>
    <message>
      <source>Later</source>
      <translation>Später</translation>
    </message>
    <message>
      <source>Give it up</source>
      <translation>Verwerfen</translation>
    </message>
    <message>
      <source>show scene “{title}”</source>
      <translation>Szene „{title}“ zeigen</translation>
    </message>
    <message>
      <source>{n} {title}: {count} labels; the hall is shown {most}</source>
      <translation>{n} {title}: {count} Beschriftungen; im Saal stehen {most}</translation>
    </message>
    <message>
      <source>All {count} scenes looked through.</source>
      <translation>Alle {count} Szenen durchgesehen.</translation>
    </message>
    <message>
      <source>here {time}</source>
      <translation>hier {time}</translation>
    </message>
    <message>
      <source>No notes.</source>
      <translation>Keine Notizen.</translation>
    </message>
    <message>
      <source>This is the last scene.</source>
      <translation>Das ist die letzte Szene.</translation>
    </message>
    <message>
      <source>Away from the scene: R goes back.</source>
      <translation>Von der Szene weg: R führt zurück.</translation>
    </message>
    <message>
      <source>The screen is blank.</source>
      <translation>Der Bildschirm ist leer.</translation>
    </message>
    <message>
      <source>Pen: C clears, D puts it away.</source>
      <translation>Stift: C wischt, D legt ihn weg.</translation>
    </message>
    <message>
      <source>Spotlight on.</source>
      <translation>Lichtkegel an.</translation>
    </message>
    <message>
      <source>Scene {n} …</source>
      <translation>Szene {n} …</translation>
    </message>
    <message>
      <source>Playing, {time} to go.</source>
      <translation>Läuft, noch {time}.</translation>
    </message>
    <message>
      <source>A screen was taken away.</source>
      <translation>Ein Bildschirm wurde entfernt.</translation>
    </message>
    <message>
      <source>pace {pace}, {seconds} s to go</source>
      <translation>Tempo {pace}, noch {seconds} s</translation>
    </message>
    <message>
      <source>The words are smaller than the last row needs.</source>
      <translation>Die Texte sind kleiner, als die letzte Reihe es braucht.</translation>
    </message>
    <message>
      <source>The labels are smaller than the last row needs.</source>
      <translation>Die Beschriftungen sind kleiner, als die letzte Reihe es braucht.</translation>
    </message>
    <message>
      <source>“{title}” was not opened while presenting.</source>
      <translation>„{title}“ wurde während des Vortrags nicht geöffnet.</translation>
    </message>
    <message>
      <source>{long} mm long, blade {deep} mm deep</source>
      <translation>{long} mm lang, Klinge {deep} mm tief</translation>
    </message>
    <message>
      <source>{part}: over {long} mm, from {deep} mm down</source>
      <translation>{part}: über {long} mm, ab {deep} mm Tiefe</translation>
    </message>
    <message>
      <source>This cut loses {count} thing that must stay.</source>
      <translation>Dieser Schnitt kostet {count} Struktur, die bleiben muss.</translation>
    </message>
    <message>
      <source>This cut loses {count} things that must stay.</source>
      <translation>Dieser Schnitt kostet {count} Strukturen, die bleiben müssen.</translation>
    </message>
    <message>
      <source>This cut loses nothing but the layer itself.</source>
      <translation>Dieser Schnitt trifft nichts als die Schicht selbst.</translation>
    </message>
    <message>
      <source>The first thing to be kept lies {mm} mm down.</source>
      <translation>Das Erste, was bleiben muss, liegt {mm} mm tief.</translation>
    </message>
    <message>
      <source>Would be lost</source>
      <translation>Ginge verloren</translation>
    </message>
    <message>
      <source>Clearance to what must stay</source>
      <translation>Abstand zu dem, was bleiben muss</translation>
    </message>
    <message>
      <source>Layers under the line</source>
      <translation>Schichten unter der Linie</translation>
    </message>
    <message>
      <source>“{line}”, {mm} mm</source>
      <translation>„{line}“, {mm} mm</translation>
    </message>
    <message>
      <source>{mean} mm away on the mean, {most} mm at most; {share} % of it followed</source>
      <translation>im Mittel {mean} mm entfernt, höchstens {most} mm; {share} % davon gefolgt</translation>
    </message>
    <message>
      <source>{loss} – must be kept</source>
      <translation>{loss} – muss bleiben</translation>
    </message>
    <message>
      <source>{part}: cut</source>
      <translation>{part}: durchtrennt</translation>
    </message>
    <message>
      <source>{part}: {mm} mm</source>
      <translation>{part}: {mm} mm</translation>
    </message>
    <message>
      <source>{part}: {mean} mm thick (least {least})</source>
      <translation>{part}: {mean} mm dick (mindestens {least})</translation>
    </message>
    <message>
      <source>The blade goes through {names}.</source>
      <translation>Die Klinge geht durch {names}.</translation>
    </message>
    <message>
      <source>Nothing that must stay is cut, but the blade goes beyond the layer.</source>
      <translation>Nichts, was bleiben muss, ist durchtrennt, aber die Klinge geht über die Schicht hinaus.</translation>
    </message>
    <message>
      <source>Beside the plan's line</source>
      <translation>Neben der Linie des Plans</translation>
    </message>
    <message>
      <source>Nothing but the layer itself.</source>
      <translation>Nichts als die Schicht selbst.</translation>
    </message>
    <message>
      <source>This step keeps nothing near here.</source>
      <translation>Dieser Schritt schont in der Nähe nichts.</translation>
    </message>
    <message>
      <source>{mm} mm down</source>
      <translation>{mm} mm tief</translation>
    </message>
    <message>
      <source>under {share} % of the line</source>
      <translation>unter {share} % der Linie</translation>
    </message>
    <message>
      <source>{count} parts taken off are not in this model ({part})</source>
      <translation>{count} abgetragene Teile gibt es in diesem Modell nicht ({part})</translation>
    </message>
    <message>
      <source>the line has {count} letters; {most} fit in one row</source>
      <translation>die Zeile hat {count} Zeichen; {most} passen in eine Reihe</translation>
    </message>
    <message>
      <source>{field}: {part} is not in this model</source>
      <translation>{field}: {part} gibt es in diesem Modell nicht</translation>
    </message>
    <message>
      <source>{part} is picked but not shown</source>
      <translation>{part} ist gewählt, aber nicht zu sehen</translation>
    </message>
    <message>
      <source>keep “{title}”</source>
      <translation>„{title}“ behalten</translation>
    </message>
    <message>
      <source>new view for “{title}”</source>
      <translation>neue Ansicht für „{title}“</translation>
    </message>
    <message>
      <source>change title of scene {n}</source>
      <translation>Titel der Szene {n} ändern</translation>
    </message>
    <message>
      <source>change line of scene {n}</source>
      <translation>Zeile der Szene {n} ändern</translation>
    </message>
    <message>
      <source>change notes of scene {n}</source>
      <translation>Notizen der Szene {n} ändern</translation>
    </message>
    <message>
      <source>duplicate “{title}”</source>
      <translation>„{title}“ verdoppeln</translation>
    </message>
    <message>
      <source>delete “{title}”</source>
      <translation>„{title}“ löschen</translation>
    </message>
    <message>
      <source>move “{title}”</source>
      <translation>„{title}“ verschieben</translation>
    </message>
    <message>
      <source>bring the talk back</source>
      <translation>Vortrag wiederherstellen</translation>
    </message>
    <message>
      <source>name the talk</source>
      <translation>Vortrag benennen</translation>
    </message>
    <message>
      <source>at the origin of {muscle}</source>
      <translation>am Ursprung: {muscle}</translation>
    </message>
    <message>
      <source>In view from now on: {share} of a part.</source>
      <translation>Als freigelegt gelten von nun an {share} eines Teils.</translation>
    </message>
    <message>
      <source>Share that counts as in view</source>
      <translation>Anteil, der als freigelegt gilt</translation>
    </message>
    <message>
      <source>So much of the part's area counts as brought into view</source>
      <translation>So viel von der Fläche des Teils gilt als freigelegt</translation>
    </message>
    <message>
      <source>Bring so much into view</source>
      <translation>So viel freilegen</translation>
    </message>
    <message>
      <source>Window in the deep fascia</source>
      <translation>Fenster in der tiefen Faszie</translation>
    </message>
    <message>
      <source>Name or number (optional)</source>
      <translation>Name oder Nummer (freiwillig)</translation>
    </message>
    <message>
      <source>Right answers</source>
      <translation>Richtige Antworten</translation>
    </message>
    <message>
      <source>Over the pin</source>
      <translation>Über der Nadel</translation>
    </message>
    <message>
      <source>Sinew of {name}: {which}.</source>
      <translation>Sehnig ist an {name}: {which}.</translation>
    </message>
    <message>
      <source>From the skin inwards at the tag: {names}.</source>
      <translation>Von der Haut nach innen an der Marke: {names}.</translation>
    </message>
    <message>
      <source>Which tissue or layer it is</source>
      <translation>Welches Gewebe oder welche Schicht es ist</translation>
    </message>
    <message>
      <source>What lies directly superficial to it</source>
      <translation>Was unmittelbar darüber liegt</translation>
    </message>
    <message>
      <source>The pin stands on {name}. In the whole back, what lies directly superficial to it there?</source>
      <translation>Die Nadel steht auf: {name}. Was liegt dort am ganzen Rücken unmittelbar darüber?</translation>
    </message>
    <message>
      <source>Of which tissue or layer is the place that carries the tag?</source>
      <translation>Zu welchem Gewebe oder welcher Schicht gehört die Stelle mit der Marke?</translation>
    </message>
    <message>
      <source>deep fascia</source>
      <translation>tiefe Faszie</translation>
    </message>
    <message>
      <source>aponeurosis or tendon</source>
      <translation>Aponeurose oder Sehne</translation>
    </message>
    <message>
      <source>Skin: when it is cut through, its edges gape and yellow fat shows between them.</source>
      <translation>Haut: Ist sie durchtrennt, klaffen die Ränder, und dazwischen zeigt sich gelbes Fett.</translation>
    </message>
    <message>
      <source>Superficial fascia: fat in lobules, with cutaneous nerves and vessels.</source>
      <translation>Unterhautgewebe: Fett in Läppchen, mit Hautnerven und Gefäßen.</translation>
    </message>
    <message>
      <source>Deep fascia: a thin white sheet without flesh, stuck to what it covers.</source>
      <translation>Tiefe Faszie: ein dünnes weißes Blatt ohne Fleisch, das auf dem haftet, was es bedeckt.</translation>
    </message>
    <message>
      <source>Muscle: red flesh, its bundles run side by side.</source>
      <translation>Muskel: rotes Fleisch, dessen Bündel nebeneinander laufen.</translation>
    </message>
    <message>
      <source>Aponeurosis or tendon: white and shining, the flesh of a muscle passes into it.</source>
      <translation>Aponeurose oder Sehne: weiß und glänzend; das Fleisch eines Muskels geht in sie über.</translation>
    </message>
    <message>
      <source>Ligament: white fibres from bone to bone, without a belly.</source>
      <translation>Band: weiße Fasern von Knochen zu Knochen, ohne Muskelbauch.</translation>
    </message>
    <message>
      <source>Bone: hard under the probe, and it does not give.</source>
      <translation>Knochen: hart unter der Sonde, er gibt nicht nach.</translation>
    </message>
    <message>
      <source>Nerve: a white cord that branches and stays round when it is pressed.</source>
      <translation>Nerv: ein weißer Strang, der sich verzweigt und unter Druck rund bleibt.</translation>
    </message>
    <message>
      <source>Artery: a tube with a firm wall that springs back when it is pressed.</source>
      <translation>Arterie: ein Rohr mit fester Wand, das nach Druck zurückfedert.</translation>
    </message>
    <message>
      <source>a thin fibrous sheet at the skull</source>
      <translation>ein dünnes Faserblatt am Schädel</translation>
    </message>
    <message>
      <source>half of a diamond of aponeurosis about C7</source>
      <translation>die Hälfte einer Sehnenraute um C7</translation>
    </message>
    <message>
      <source>a small triangular aponeurosis at the scapula, and a short one along the lowest spines</source>
      <translation>eine kleine dreieckige Aponeurose am Schulterblatt und eine kurze entlang der untersten Dornfortsätze</translation>
    </message>
    <message>
      <source>a wide aponeurosis towards the midline, fused with the thoracolumbar fascia; a four-sided tendon about 7 cm long at the humerus</source>
      <translation>eine breite Aponeurose zur Mittellinie hin, mit der Fascia thoracolumbalis verwachsen; eine vierseitige, etwa 7 cm lange Sehne am Oberarmknochen</translation>
    </message>
    <message>
      <source>its medial half is a thin shining aponeurosis</source>
      <translation>die mediale Hälfte, eine dünne, glänzende Aponeurose</translation>
    </message>
    <message>
      <source>its medial half is an aponeurosis fused with the thoracolumbar fascia and that of latissimus</source>
      <translation>die mediale Hälfte, eine Aponeurose, die mit der Fascia thoracolumbalis und der des Latissimus verwachsen ist</translation>
    </message>
    <message>
      <source>a tendinous band across its medial part</source>
      <translation>ein sehniger Streifen quer durch den medialen Teil</translation>
    </message>
    <message>
      <source>Inside: three.js in the take-home page (MIT), Open Sans on the lab sheet (Apache 2.0), the steps of Fast-Quadric-Mesh-Simplification (MIT).</source>
      <translation>Darin: three.js in der Seite zum Mitnehmen (MIT), Open Sans im Arbeitsblatt (Apache 2.0), die Schritte von Fast-Quadric-Mesh-Simplification (MIT).</translation>
    </message>
    <message>
      <source>Erector spinae</source>
      <translation>Erector spinae</translation>
    </message>
    <message>
      <source>Drawn aside {share}</source>
      <translation>Beiseitegezogen {share}</translation>
    </message>
    <message>
      <source>Drawn aside: {names}</source>
      <translation>Beiseitegezogen: {names}</translation>
    </message>
    <message>
      <source>Not read or kept: {count}</source>
      <translation>Nicht gelesen oder behalten: {count}</translation>
    </message>
    <message>
      <source>What could not be read or kept</source>
      <translation>Was nicht gelesen oder behalten werden konnte</translation>
    </message>
    <message>
      <source>Something went wrong: {what}. It is in the log, {path}.</source>
      <translation>Etwas ist schiefgegangen: {what}. Es steht im Protokoll, {path}.</translation>
    </message>
    <message>
      <source>The model cannot be asked: {why}</source>
      <translation>Das Modell kann nicht befragt werden: {why}</translation>
    </message>
    <message>
      <source>Opened {file}.</source>
      <translation>{file} geöffnet.</translation>
    </message>
    <message>
      <source>It was saved on another body ({fields}); this body is kept.</source>
      <translation>Gespeichert wurde an einem anderen Körper ({fields}); dieser Körper bleibt.</translation>
    </message>
    <message>
      <source>{path} could not be written.</source>
      <translation>{path} konnte nicht geschrieben werden.</translation>
    </message>
    <message>
      <source>{count} parts in it are not in this model; they are kept in the file.</source>
      <translation>{count} Teile darin hat dieses Modell nicht; in der Datei bleiben sie stehen.</translation>
    </message>
    <message>
      <source>a section is saved as .svg, .pdf or .png, not {kind}</source>
      <translation>ein Schnitt wird als .svg, .pdf oder .png gespeichert, nicht als {kind}</translation>
    </message>
    <message>
      <source>New learner</source>
      <translation>Neue Lernende</translation>
    </message>
    <message>
      <source>Delete learner</source>
      <translation>Lernende löschen</translation>
    </message>
    <message>
      <source>{name} must lie in {range}, got {given}</source>
      <translation>{name} muss in {range} liegen, war {given}</translation>
    </message>
    <message>
      <source>The settings could not be read ({why}). They were kept as {path}; the defaults are used.</source>
      <translation>Die Einstellungen konnten nicht gelesen werden ({why}). Sie liegen jetzt als {path}; es gelten die Vorgaben.</translation>
    </message>
    <message>
      <source>{name} must be one of {allowed}, got {given}</source>
      <translation>{name} muss eines sein von {allowed}, war {given}</translation>
    </message>
    <message>
      <source>settings must be an object</source>
      <translation>Einstellungen müssen ein Objekt sein</translation>
    </message>
    <message>
      <source>broken at line {line}</source>
      <translation>beschädigt in Zeile {line}</translation>
    </message>
    <message>
      <source>nested too deeply</source>
      <translation>zu tief verschachtelt</translation>
    </message>
    <message>
      <source>The settings in {path} could not be read ({why}). The defaults are used.</source>
      <translation>Die Einstellungen in {path} konnten nicht gelesen werden ({why}). Es gelten die Vorgaben.</translation>
    </message>
    <message>
      <source>The settings could not be saved to {path}: {why}.</source>
      <translation>Die Einstellungen konnten nicht nach {path} gespeichert werden: {why}.</translation>
    </message>
    <message>
      <source>window must hold x, y, width, height</source>
      <translation>window muss x, y, Breite und Höhe enthalten</translation>
    </message>
    <message>
      <source>{name} cannot be {given}</source>
      <translation>{name} kann nicht {given} sein</translation>
    </message>
    <message>
      <source>it is no text</source>
      <translation>es ist kein Text</translation>
    </message>
    <message>
      <source>an object or null is wanted, got {given}</source>
      <translation>erwartet wird ein Objekt oder null, da stand {given}</translation>
    </message>
    <message>
      <source>unknown field {name}</source>
      <translation>unbekanntes Feld {name}</translation>
    </message>
    <message>
      <source>a cut has at most {most} points, got {count}</source>
      <translation>eine Schnittlinie hat höchstens {most} Punkte, hier sind es {count}</translation>
    </message>
    <message>
      <source>each fold may lie there once, got {names}</source>
      <translation>jeder Lappen darf nur einmal daliegen, hier {names}</translation>
    </message>
    <message>
      <source>state field {name} cannot be read: {why}</source>
      <translation>Feld {name} des Zustands ist nicht lesbar: {why}</translation>
    </message>
    <message>
      <source>{file} is not a working state of Peelback</source>
      <translation>{file} ist kein Arbeitsstand von Peelback</translation>
    </message>
    <message>
      <source>state must be an object, got {given}</source>
      <translation>state muss ein Objekt sein, da stand {given}</translation>
    </message>
    <message>
      <source>a list of names is wanted</source>
      <translation>erwartet wird eine Liste von Namen</translation>
    </message>
    <message>
      <source>a whole number is wanted, got {given}</source>
      <translation>erwartet wird eine ganze Zahl, da stand {given}</translation>
    </message>
    <message>
      <source>{what} is wanted, got {given}</source>
      <translation>erwartet wird {what}, da stand {given}</translation>
    </message>
    <message>
      <source>{file} names no version; nothing was opened</source>
      <translation>{file} nennt keine Version; es wurde nichts geöffnet</translation>
    </message>
    <message>
      <source>{file} was saved by a newer Peelback (file version {version}, this one reads up to {newest})</source>
      <translation>{file} stammt von einem neueren Peelback (Dateiversion {version}, dieses hier liest bis {newest})</translation>
    </message>
    <message>
      <source>body of {file} must be an object</source>
      <translation>body in {file} muss ein Objekt sein</translation>
    </message>
    <message>
      <source>detail must be preview or full, got {given}</source>
      <translation>detail muss preview oder full sein, war {given}</translation>
    </message>
    <message>
      <source>unknown field {name} in state</source>
      <translation>unbekanntes Feld {name} im Zustand</translation>
    </message>
    <message>
      <source>{file} is too large: {size} MB, up to {most} are read</source>
      <translation>{file} ist zu groß: {size} MB, gelesen werden bis zu {most}</translation>
    </message>
    <message>
      <source>{path} cannot be read: {why}</source>
      <translation>{path} kann nicht gelesen werden: {why}</translation>
    </message>
    <message>
      <source>{file} is broken at line {line}; nothing was opened</source>
      <translation>{file} ist in Zeile {line} beschädigt; es wurde nichts geöffnet</translation>
    </message>
    <message>
      <source>{file} is broken; nothing was opened</source>
      <translation>{file} ist beschädigt; es wurde nichts geöffnet</translation>
    </message>
    <message>
      <source>“{typed}” leaves open which one is meant: {name}.</source>
      <translation>„{typed}“ lässt offen, was genau gemeint ist: {name}.</translation>
    </message>
    <message>
      <source>{path} cannot be used: {why}</source>
      <translation>{path} ist nicht benutzbar: {why}</translation>
    </message>
    <message>
      <source>The results in {file} cannot be read ({why}); the file was kept as {aside} and a new one begun.</source>
      <translation>Die Ergebnisse in {file} sind nicht lesbar ({why}); die Datei liegt jetzt als {aside}, eine neue ist begonnen.</translation>
    </message>
    <message>
      <source>a learner's name needs 1 to {most} letters, got {count}</source>
      <translation>ein Name braucht 1 bis {most} Buchstaben, hier sind es {count}</translation>
    </message>
    <message>
      <source>there is no learner “{name}”</source>
      <translation>niemand hier heißt „{name}“</translation>
    </message>
    <message>
      <source>the file is damaged</source>
      <translation>die Datei ist beschädigt</translation>
    </message>
    <message>
      <source>the learner was not kept: {why}</source>
      <translation>der Name wurde nicht gespeichert: {why}</translation>
    </message>
    <message>
      <source>the learner was not deleted: {why}</source>
      <translation>es wurde nichts gelöscht: {why}</translation>
    </message>
    <message>
      <source>the answer was not kept: {why}</source>
      <translation>die Antwort wurde nicht gespeichert: {why}</translation>
    </message>
    <message>
      <source>the examination was not kept: {why}</source>
      <translation>die Prüfung wurde nicht gespeichert: {why}</translation>
    </message>
    <message>
      <source>written by a newer Peelback, format {version}</source>
      <translation>von einem neueren Peelback geschrieben, Format {version}</translation>
    </message>
    <message>
      <source>Results cannot be kept: {why}. What is answered now is lost at the end.</source>
      <translation>Ergebnisse können nicht aufbewahrt werden: {why}. Was jetzt beantwortet wird, ist am Ende verloren.</translation>
    </message>
    <message>
      <source>Close: {count}.</source>
      <translation>Knapp daneben: {count}.</translation>
    </message>
    <message>
      <source>An unsaved talk could not be read ({why}). It was kept as {path}.</source>
      <translation>Ein ungespeicherter Vortrag war nicht lesbar ({why}). Er liegt jetzt als {path}.</translation>
    </message>
    <message>
      <source>The talk could not be kept on the side in {path}: {why}.</source>
      <translation>Der Vortrag konnte nicht in {path} zwischengespeichert werden: {why}.</translation>
    </message>
    <message>
      <source>the unsaved talk</source>
      <translation>der ungespeicherte Vortrag</translation>
    </message>
    <message>
      <source>An unsaved talk in {path} could not be read ({why}).</source>
      <translation>Ein ungespeicherter Vortrag in {path} war nicht lesbar ({why}).</translation>
    </message>
    <message>
      <source>a scene needs a title</source>
      <translation>eine Szene braucht einen Titel</translation>
    </message>
    <message>
      <source>a talk may hold up to {most} scenes</source>
      <translation>ein Vortrag darf bis zu {most} Szenen haben</translation>
    </message>
    <message>
      <source>a talk needs a title of one line, up to {most} letters</source>
      <translation>ein Vortrag braucht einen Titel in einer Zeile, bis zu {most} Buchstaben</translation>
    </message>
    <message>
      <source>{name} may hold up to {most} letters, got {count}</source>
      <translation>{name} darf bis zu {most} Buchstaben haben, hier sind es {count}</translation>
    </message>
    <message>
      <source>{name} must be one line</source>
      <translation>{name} muss eine Zeile sein</translation>
    </message>
    <message>
      <source>{file} is not a talk of Peelback</source>
      <translation>{file} ist kein Vortrag von Peelback</translation>
    </message>
    <message>
      <source>{word} is no number</source>
      <translation>{word} ist keine Zahl</translation>
    </message>
    <message>
      <source>{file} holds no list of scenes</source>
      <translation>{file} enthält keine Liste von Szenen</translation>
    </message>
    <message>
      <source>{file} holds {count} scenes; up to {most} are read</source>
      <translation>{file} enthält {count} Szenen; gelesen werden bis zu {most}</translation>
    </message>
    <message>
      <source>{name} must be text, got {given}</source>
      <translation>{name} muss Text sein, da stand {given}</translation>
    </message>
    <message>
      <source>must be an object, got {given}</source>
      <translation>muss ein Objekt sein, da stand {given}</translation>
    </message>
    <message>
      <source>holds no state</source>
      <translation>enthält keinen Zustand</translation>
    </message>
    <message>
      <source>seconds must be a number, got {given}</source>
      <translation>seconds muss eine Zahl sein, da stand {given}</translation>
    </message>
    <message>
      <source>{file} is broken ({why}); nothing was opened</source>
      <translation>{file} ist beschädigt ({why}); es wurde nichts geöffnet</translation>
    </message>
    <message>
      <source>scene {n} of {file}: {why}</source>
      <translation>Szene {n} von {file}: {why}</translation>
    </message>
    <message>
      <source>The model could not be built: {why} The log is in {path}.</source>
      <translation>Das Modell konnte nicht gebaut werden: {why} Das Protokoll liegt in {path}.</translation>
    </message>
    <message>
      <source>The last session could not be reopened: {why}</source>
      <translation>Die letzte Sitzung konnte nicht wieder geöffnet werden: {why}</translation>
    </message>
    <message>
      <source>The 3D picture cannot be shown: no usable OpenGL was found.
Install a graphics driver (on Linux without one: Mesa), or write pictures with “peelback plate”.

{why}

Log: {path}</source>
      <translation>Das 3D-Bild kann nicht gezeigt werden: kein brauchbares OpenGL gefunden.
Installieren Sie einen Grafiktreiber (unter Linux ohne einen: Mesa), oder schreiben Sie Bilder mit „peelback plate“.

{why}

Protokoll: {path}</translation>
    </message>
    <message>
      <source>an object with “left” and “right”</source>
      <translation>ein Objekt mit „left“ und „right“</translation>
    </message>
    <message>
      <source>a list of names</source>
      <translation>eine Liste von Namen</translation>
    </message>
    <message>
      <source>a list of objects with “fold_id” and “share”</source>
      <translation>eine Liste von Objekten mit „fold_id“ und „share“</translation>
    </message>
    <message>
      <source>another kind of value</source>
      <translation>ein Wert anderer Art</translation>
    </message>
    <message>
      <source>a number</source>
      <translation>eine Zahl</translation>
    </message>
    <message>
      <source>a list of places of three numbers</source>
      <translation>eine Liste von Orten aus drei Zahlen</translation>
    </message>
    <message>
      <source>a list of objects with “point” and “text”</source>
      <translation>eine Liste von Objekten mit „point“ und „text“</translation>
    </message>
    <message>
      <source>an object with “position”, “focal_point”, “view_up” and “parallel_scale”</source>
      <translation>ein Objekt mit „position“, „focal_point“, „view_up“ und „parallel_scale“</translation>
    </message>
    <message>
      <source>an object that places the section</source>
      <translation>ein Objekt, das den Schnitt legt</translation>
    </message>
    <message>
      <source>an object with the cut's places</source>
      <translation>ein Objekt mit den Orten der Schnittlinie</translation>
    </message>
    <message>
      <source>true or false</source>
      <translation>true oder false</translation>
    </message>
    <message>
      <source>text</source>
      <translation>Text</translation>
    </message>
    <message>
      <source>a whole number</source>
      <translation>eine ganze Zahl</translation>
    </message>
    <message>
      <source>Step {n}, {title}: {do}</source>
      <translation>Schritt {n}, {title}: {do}</translation>
    </message>
    <message>
      <source>{name}: {depth} mm under the line at the nearest, met along {length} mm of it.</source>
      <translation>{name}: an der nächsten Stelle {depth} mm unter der Linie, auf {length} mm ihrer Länge getroffen.</translation>
    </message>
    <message>
      <source>The step keeps it.</source>
      <translation>Der Schritt erhält es.</translation>
    </message>
    <message>
      <source>To which of these is the tagged structure attached?</source>
      <translation>Woran davon ist die markierte Struktur befestigt?</translation>
    </message>
    <message>
      <source>By question</source>
      <translation>Nach Fragen</translation>
    </message>
    <message>
      <source>Correct</source>
      <translation>Richtig</translation>
    </message>
    <message>
      <source>It was kept as {path}.</source>
      <translation>Sie liegt jetzt als {path}.</translation>
    </message>
    <message>
      <source>there is nothing to ask about: the model has no parts</source>
      <translation>es gibt nichts zu fragen: das Modell hat keine Teile</translation>
    </message>
    <message>
      <source>a part must be named</source>
      <translation>ein Teil muss genannt werden</translation>
    </message>
    <message>
      <source>{part} is taken away already; lay it back first</source>
      <translation>{part} ist schon weggenommen; legen Sie es zuerst zurück</translation>
    </message>
    <message>
      <source>{part} lies where no ray from behind reaches</source>
      <translation>{part} liegt, wo kein Strahl von hinten hinkommt</translation>
    </message>
    <message>
      <source>the sheet is missing between the lines of incision</source>
      <translation>zwischen den Schnittlinien fehlt das Blatt</translation>
    </message>
    <message>
      <source>position and tilt of a section must be numbers</source>
      <translation>Lage und Neigung eines Schnitts müssen Zahlen sein</translation>
    </message>
    <message>
      <source>there is nothing to probe: the model has no parts</source>
      <translation>es gibt nichts zu sondieren: das Modell hat keine Teile</translation>
    </message>
    <message>
      <source>lateral must lie in 0–{reach} mm (the half width of the body), got {lateral}</source>
      <translation>der seitliche Abstand muss in 0–{reach} mm liegen (halbe Breite des Körpers), war {lateral}</translation>
    </message>
    <message>
      <source>nothing lies at {level}, {lateral} mm to the {side}</source>
      <translation>auf Höhe {level}, {lateral} mm {side}, liegt nichts</translation>
    </message>
    <message>
      <source>a cut needs two places at least</source>
      <translation>ein Schnitt braucht mindestens zwei Stellen</translation>
    </message>
  </context>
</TS>
