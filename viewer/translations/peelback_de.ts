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
      <translation>abgetragen bis Stratum {n}, {name}{under}</translation>
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
      <translation>Stratum {n}, {name}{mm}</translation>
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
      <translation>{kind}, Stratum {n} ({name}){done}</translation>
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
      <translation>Stratum {n} ({name}){group}; dort {mm} mm dick</translation>
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
      <translation>Strata 0–{last}</translation>
    </message>
    <message>
      <source>{names} and {more} more</source>
      <translation>{names} und {more} weitere</translation>
    </message>
    <message>
      <source>stratum 0 ({name})</source>
      <translation>Stratum 0 ({name})</translation>
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
      <translation>Eine je Stratum</translation>
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
      <translation>Abgetragen bis zur Schicht {n} ({name}).</translation>
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
      <source>Which of these is an origin of the tagged structure?</source>
      <translation>Was davon ist ein Ursprung der markierten Struktur?</translation>
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
      <source>Which of these is an insertion of the tagged structure?</source>
      <translation>Was davon ist ein Ansatz der markierten Struktur?</translation>
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
  </context>
</TS>
