<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>advice desk</name>
    <message>
        <source>hide advice</source>
        <translation>Hinweis ausblenden</translation>
    </message>
    <message>
        <source>show hidden advice</source>
        <translation>ausgeblendete Hinweise zeigen</translation>
    </message>
</context>
<context>
    <name>advice panel</name>
    <message>
        <source>Nothing to say about this plan.</source>
        <translation>Zu diesem Plan ist nichts zu sagen.</translation>
    </message>
    <message>
        <source>Nothing else to say about this plan.</source>
        <translation>Sonst ist zu diesem Plan nichts zu sagen.</translation>
    </message>
    <message>
        <source>show me</source>
        <translation>zeigen</translation>
    </message>
    <message>
        <source>Hide this advice</source>
        <translation>Diesen Hinweis ausblenden</translation>
    </message>
    <message>
        <source>Hide this advice in this case (Del). It can be shown again.</source>
        <translation>Diesen Hinweis in diesem Fall ausblenden (Entf). Er kann wieder gezeigt werden.</translation>
    </message>
    <message>
        <source>unmark</source>
        <translation>Marke weg</translation>
    </message>
    <message>
        <source>Hide this advice: {sentence}</source>
        <translation>Diesen Hinweis ausblenden: {sentence}</translation>
    </message>
    <message>
        <source>Return: show me.</source>
        <translation>Eingabetaste: zeigen.</translation>
    </message>
    <message>
        <source>Advice</source>
        <translation>Hinweise</translation>
    </message>
    <message>
        <source>Show again what was hidden in this case</source>
        <translation>Wieder zeigen, was in diesem Fall ausgeblendet wurde</translation>
    </message>
    <message>
        <source>{hidden} hidden: show again</source>
        <translation>{hidden} ausgeblendet: wieder zeigen</translation>
    </message>
    <message>
        <source>to settle</source>
        <translation>zu klären</translation>
    </message>
    <message>
        <source>to check</source>
        <translation>zu prüfen</translation>
    </message>
    <message>
        <source>noted</source>
        <translation>zur Kenntnis</translation>
    </message>
</context>
<context>
    <name>after dialog</name>
    <message>
        <source>as all of it</source>
        <translation>wie die ganze Fläche</translation>
    </message>
    <message>
        <source>After sintering</source>
        <translation>Nach dem Sintern</translation>
    </message>
    <message>
        <source>Stain lies near the surface: grinding exposes paler ceramic. The prediction shows what is left.</source>
        <translation>Die Färbung liegt nahe der Oberfläche: Beschleifen legt hellere Keramik frei. Die Vorhersage zeigt, was bleibt.</translation>
    </message>
    <message>
        <source>Finish</source>
        <translation>Oberfläche</translation>
    </message>
    <message>
        <source>ground away</source>
        <translation>abgeschliffen</translation>
    </message>
    <message>
        <source>mm, sintered</source>
        <translation>mm, gesintert</translation>
    </message>
    <message>
        <source>all of the outside</source>
        <translation>die ganze Außenfläche</translation>
    </message>
    <message>
        <source>Effects of finish and depth are assumed until a laboratory has measured them. Walls get thinner by grinding: keep to the smallest the block&apos;s maker allows.</source>
        <translation>Wirkungen von Oberfläche und Tiefe sind angenommen, bis ein Labor sie gemessen hat. Beschleifen macht Wände dünner: Halten Sie die kleinste Wand ein, die der Hersteller des Rohlings zulässt.</translation>
    </message>
    <message>
        <source>Ground away from {name}</source>
        <translation>Abgeschliffen von {name}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
</context>
<context>
    <name>answers</name>
    <message>
        <source>No crown is open.</source>
        <translation>Keine Krone ist offen.</translation>
    </message>
    <message>
        <source>Open a mesh or a case first.</source>
        <translation>Öffnen Sie zuerst ein Netz oder einen Fall.</translation>
    </message>
</context>
<context>
    <name>backing dialog</name>
    <message>
        <source>as in the other units</source>
        <translation>wie bei den anderen Einheiten</translation>
    </message>
    <message>
        <source>inside the crown</source>
        <translation>in der Krone</translation>
    </message>
    <message>
        <source>pontic</source>
        <translation>Brückenglied</translation>
    </message>
    <message>
        <source>incisal edge</source>
        <translation>Schneidekante</translation>
    </message>
    <message>
        <source>screw channel</source>
        <translation>Schraubenkanal</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Thin walls show what lies behind them; a dark stump lowers value most where the wall is thinnest.</source>
        <translation>Dünne Wände zeigen, was hinter ihnen liegt; ein dunkler Stumpf senkt die Helligkeit dort am meisten, wo die Wand am dünnsten ist.</translation>
    </message>
    <message>
        <source>region</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>behind the wall</source>
        <translation>hinter der Wand</translation>
    </message>
    <message>
        <source>cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>inside {name}</source>
        <translation>in {name}</translation>
    </message>
    <message>
        <source>Behind {name}</source>
        <translation>Hinter {name}</translation>
    </message>
    <message>
        <source>Cement, {name}</source>
        <translation>Zement, {name}</translation>
    </message>
    <message>
        <source>Cement thickness, {name}</source>
        <translation>Zementdicke, {name}</translation>
    </message>
</context>
<context>
    <name>bench dialog</name>
    <message>
        <source>nothing yet</source>
        <translation>noch nichts</translation>
    </message>
    <message>
        <source>{count} cases ({whose})</source>
        <translation>{count} Fälle ({whose})</translation>
    </message>
    <message>
        <source>State on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>What has been done of {names}? Marks of later stages are taken back.</source>
        <translation>Was ist an {names} getan? Marken späterer Stufen werden zurückgenommen.</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Getan</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Marked so far: {marks}.</source>
        <translation>Bisher vermerkt: {marks}.</translation>
    </message>
    <message>
        <source>Nothing has been marked so far.</source>
        <translation>Bisher ist nichts vermerkt.</translation>
    </message>
</context>
<context>
    <name>bench order</name>
    <message>
        <source>Usual order: inner surface and neck, then cusps and marginal ridges, accents last (common practice, no published source).</source>
        <translation>Übliche Reihenfolge: Innenfläche und Zahnhals, dann Höcker und Randleisten, Akzente zuletzt (übliche Praxis, keine veröffentlichte Quelle).</translation>
    </message>
</context>
<context>
    <name>brush bar</name>
    <message>
        <source>Brush</source>
        <translation>Pinsel</translation>
    </message>
    <message>
        <source>paint with the left button</source>
        <translation>mit der linken Taste malen</translation>
    </message>
    <message>
        <source>Eraser</source>
        <translation>Radierer</translation>
    </message>
    <message>
        <source>gives back, takes away</source>
        <translation>gibt zurück, nimmt weg</translation>
    </message>
    <message>
        <source>Fill up to creases</source>
        <translation>Bis zu den Furchen füllen</translation>
    </message>
    <message>
        <source>click a place; with Shift it takes away</source>
        <translation>auf eine Stelle klicken; mit der Umschalttaste wird weggenommen</translation>
    </message>
    <message>
        <source>Line along a crease or line angle</source>
        <translation>Linie entlang einer Furche oder Kantenlinie</translation>
    </message>
    <message>
        <source>click where it starts and where it ends; with Shift it takes away</source>
        <translation>auf Anfang und Ende klicken; mit der Umschalttaste wird weggenommen</translation>
    </message>
    <message>
        <source>Grow the chosen area</source>
        <translation>Gewählte Fläche vergrößern</translation>
    </message>
    <message>
        <source>Shrink the chosen area</source>
        <translation>Gewählte Fläche verkleinern</translation>
    </message>
    <message>
        <source>Smooth the edge of the chosen area</source>
        <translation>Rand der gewählten Fläche glätten</translation>
    </message>
    <message>
        <source>Mirror mesial-distal...</source>
        <translation>Mesial-distal spiegeln...</translation>
    </message>
    <message>
        <source>Streaks...</source>
        <translation>Streifen...</translation>
    </message>
    <message>
        <source>Reset to the proposal...</source>
        <translation>Auf den Vorschlag zurücksetzen...</translation>
    </message>
    <message>
        <source>{name} in coats</source>
        <translation>{name} in Aufträgen</translation>
    </message>
    <message>
        <source>{name} in mm</source>
        <translation>{name} in mm</translation>
    </message>
    <message>
        <source>{value:g} coat</source>
        <translation>{value:g} A.</translation>
    </message>
    <message>
        <source>{value:g} coats</source>
        <translation>{value:g} A.</translation>
    </message>
    <message>
        <source>size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>soft edge</source>
        <translation>Rand</translation>
    </message>
    <message>
        <source>strength</source>
        <translation>Stärke</translation>
    </message>
    <message>
        <source>bend</source>
        <translation>Biegung</translation>
    </message>
    <message>
        <source>The fill stops where the surface bends more sharply than a circle of this radius</source>
        <translation>Das Füllen endet, wo sich die Oberfläche schärfer biegt als ein Kreis mit diesem Radius</translation>
    </message>
    <message>
        <source>grow by</source>
        <translation>Wachsen</translation>
    </message>
    <message>
        <source>How far Grow and Shrink move an edge, along the surface</source>
        <translation>Wie weit Vergrößern und Verkleinern einen Rand verschieben, entlang der Oberfläche</translation>
    </message>
</context>
<context>
    <name>case figures</name>
    <message>
        <source>{colour} on chalk; drops: {drops} {liquid}, {dyes}</source>
        <translation>{colour} auf Kreide; Tropfen: {drops} {liquid}, {dyes}</translation>
    </message>
    <message>
        <source>no dye; drops: {drops} {liquid}</source>
        <translation>kein Farbstoff; Tropfen: {drops} {liquid}</translation>
    </message>
    <message>
        <source>{kind}, {height:.1f} mm high, sintered size</source>
        <translation>{kind}, {height:.1f} mm hoch, Sintergröße</translation>
    </message>
    <message>
        <source>outer surface {area:.0f} mm², sintered</source>
        <translation>Außenfläche {area:.0f} mm², gesintert</translation>
    </message>
    <message>
        <source>fast, as on screen</source>
        <translation>schnell, wie am Bildschirm</translation>
    </message>
    <message>
        <source>all bands, as exported</source>
        <translation>alle Bänder, wie beim Export</translation>
    </message>
    <message>
        <source>textbook surfaces</source>
        <translation>Lehrbuchflächen</translation>
    </message>
    <message>
        <source>transport (reference)</source>
        <translation>Lichttransport (Referenz)</translation>
    </message>
    <message>
        <source>{name}: L* {lightness:.1f}, a* {a}, b* {b}, dE00 {off:.2f}</source>
        <translation>{name}: L* {lightness:.1f}, a* {a}, b* {b}, dE00 {off:.2f}</translation>
    </message>
    <message>
        <source>wall {wall_mm:.2f} mm, {region}; {light}, {degrees}°, without light from the sides</source>
        <translation>Wand {wall_mm:.2f} mm, {region}; {light}, {degrees}°, ohne seitliches Licht</translation>
    </message>
    <message>
        <source>no zone yet</source>
        <translation>noch keine Zone</translation>
    </message>
    <message>
        <source>{accent} on {zone}</source>
        <translation>{accent} auf {zone}</translation>
    </message>
    <message>
        <source>no coats</source>
        <translation>keine Aufträge</translation>
    </message>
    <message>
        <source>assumed wall {wall_mm:.2f} mm over {stump}</source>
        <translation>angenommene Wand {wall_mm:.2f} mm über {stump}</translation>
    </message>
    <message>
        <source>wall {wall_mm:.2f} mm over {stump}</source>
        <translation>Wand {wall_mm:.2f} mm über {stump}</translation>
    </message>
</context>
<context>
    <name>coat entry</name>
    <message>
        <source>clear {count} cells</source>
        <translation>{count} Zellen leeren</translation>
    </message>
    <message>
        <source>{coats} coats in {count} cells</source>
        <translation>{coats} Aufträge in {count} Zellen</translation>
    </message>
    <message>
        <source>a coat more in {count} cells</source>
        <translation>ein Auftrag mehr in {count} Zellen</translation>
    </message>
    <message>
        <source>a coat fewer in {count} cells</source>
        <translation>ein Auftrag weniger in {count} Zellen</translation>
    </message>
    <message>
        <source>There are no coats of their own to lock here.</source>
        <translation>Hier sind keine eigenen Aufträge zum Sperren.</translation>
    </message>
    <message>
        <source>No cell of the coat table is chosen.</source>
        <translation>Keine Zelle der Auftragstabelle ist gewählt.</translation>
    </message>
    <message>
        <source>Copied the coats of one cell.</source>
        <translation>Die Aufträge einer Zelle wurden kopiert.</translation>
    </message>
    <message>
        <source>Copied {count} cells.</source>
        <translation>{count} Zellen wurden kopiert.</translation>
    </message>
    <message>
        <source>cut {count} cells</source>
        <translation>{count} Zellen ausschneiden</translation>
    </message>
    <message>
        <source>paste into {count} cells</source>
        <translation>in {count} Zellen einfügen</translation>
    </message>
</context>
<context>
    <name>coat headers</name>
    <message>
        <source>Steps in painting order</source>
        <translation>Schritte in der Reihenfolge des Auftragens</translation>
    </message>
    <message>
        <source>Areas</source>
        <translation>Flächen</translation>
    </message>
</context>
<context>
    <name>coat model</name>
    <message>
        <source>outer surface</source>
        <translation>Außenfläche</translation>
    </message>
    <message>
        <source>on top of it</source>
        <translation>obenauf</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>step {step}, jar {number} {liquid}</source>
        <translation>Schritt {step}, Napf {number} {liquid}</translation>
    </message>
    <message>
        <source>{area}, step {step} {liquid}</source>
        <translation>{area}, Schritt {step} {liquid}</translation>
    </message>
    <message>
        <source>{span} coat</source>
        <translation>{span} Auftrag</translation>
    </message>
    <message>
        <source>{span} coats</source>
        <translation>{span} Aufträge</translation>
    </message>
    <message>
        <source>{coats} on {inherited} inherited from the zone below</source>
        <translation>{coats} auf {inherited} geerbt von der Zone darunter</translation>
    </message>
    <message>
        <source>{inherited} inherited from the zone below</source>
        <translation>{inherited} geerbt von der Zone darunter</translation>
    </message>
    <message>
        <source>no coats</source>
        <translation>keine Aufträge</translation>
    </message>
    <message>
        <source>brushed by hand too</source>
        <translation>auch von Hand gepinselt</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>gesperrt</translation>
    </message>
    <message>
        <source>Step {step}, jar {number} {liquid}</source>
        <translation>Schritt {step}, Napf {number} {liquid}</translation>
    </message>
    <message>
        <source>Drag it to paint it earlier or later, or press Ctrl+Shift with Left or Right.</source>
        <translation>Ziehen Sie ihn, um ihn früher oder später aufzutragen, oder drücken Sie Strg+Umschalt mit Links oder Rechts.</translation>
    </message>
</context>
<context>
    <name>coat table</name>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>No steps yet.

+ step adds one of a liquid; Suggest coats looks for a whole plan.</source>
        <translation>Noch keine Schritte.

+ Schritt fügt einen mit einer Flüssigkeit an; „Aufträge vorschlagen“ sucht einen ganzen Plan.</translation>
    </message>
    <message>
        <source>Coats by area and step</source>
        <translation>Aufträge nach Fläche und Schritt</translation>
    </message>
</context>
<context>
    <name>compare before</name>
    <message>
        <source>Nothing has been predicted yet.</source>
        <translation>Noch ist nichts vorhergesagt.</translation>
    </message>
    <message>
        <source>Being worked out; what you see is as it is now.</source>
        <translation>Wird ausgerechnet; zu sehen ist, wie es jetzt ist.</translation>
    </message>
    <message>
        <source>Let the key go to see it as it is now.</source>
        <translation>Lassen Sie die Taste los, um zu sehen, wie es jetzt ist.</translation>
    </message>
    <message>
        <source>Esc, or the entry of the menu View once more, ends it.</source>
        <translation>Esc oder noch einmal der Eintrag im Menü Ansicht beendet es.</translation>
    </message>
    <message>
        <source>The step changed the surface itself: what was before it cannot be shown here.</source>
        <translation>Der Schritt hat die Oberfläche selbst verändert: Was vorher war, kann hier nicht gezeigt werden.</translation>
    </message>
    <message>
        <source>What is shown instead</source>
        <translation>Was stattdessen gezeigt wird</translation>
    </message>
    <message>
        <source>The bare block, without any stain</source>
        <translation>Der bloße Rohling, ohne jede Färbung</translation>
    </message>
    <message>
        <source>The bare block: there is no step before this one</source>
        <translation>Der bloße Rohling: Vor diesem gibt es keinen Schritt</translation>
    </message>
    <message>
        <source>Before the last step: {label}</source>
        <translation>Vor dem letzten Schritt: {label}</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
</context>
<context>
    <name>compare desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <translation>Angehalten.</translation>
    </message>
    <message>
        <source>A &amp;step of the history</source>
        <translation>Ein &amp;Schritt der Chronik</translation>
    </message>
    <message>
        <source>A s&amp;uggested plan</source>
        <translation>Ein &amp;vorgeschlagener Plan</translation>
    </message>
    <message>
        <source>Another f&amp;urnace programme</source>
        <translation>Ein anderes Sinter&amp;programm</translation>
    </message>
    <message>
        <source>The &amp;bare block</source>
        <translation>Der &amp;bloße Rohling</translation>
    </message>
    <message>
        <source>Another &amp;case file...</source>
        <translation>Eine andere &amp;Falldatei...</translation>
    </message>
    <message>
        <source>&amp;Search for plans</source>
        <translation>Pläne s&amp;uchen</translation>
    </message>
    <message>
        <source>{at}  as it was opened</source>
        <translation>{at}  wie geöffnet</translation>
    </message>
    <message>
        <source>Before the step: {label}</source>
        <translation>Vor dem Schritt: {label}</translation>
    </message>
    <message>
        <source>As it was opened</source>
        <translation>Wie geöffnet</translation>
    </message>
    <message>
        <source>After step {at}: {label}</source>
        <translation>Nach Schritt {at}: {label}</translation>
    </message>
    <message>
        <source>Suggested plan: {title}</source>
        <translation>Vorgeschlagener Plan: {title}</translation>
    </message>
    <message>
        <source>Another case of the same crown</source>
        <translation>Ein anderer Fall derselben Krone</translation>
    </message>
    <message>
        <source>Cases (*{suffix})</source>
        <translation>Fälle (*{suffix})</translation>
    </message>
    <message>
        <source>Case {name}</source>
        <translation>Fall {name}</translation>
    </message>
    <message>
        <source>Reading the case</source>
        <translation>Fall wird gelesen</translation>
    </message>
    <message>
        <source>Suggesting coats</source>
        <translation>Aufträge werden vorgeschlagen</translation>
    </message>
    <message>
        <source>Predicting the other plan</source>
        <translation>Der andere Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>take the plan beside it ({title})</source>
        <translation>den Plan daneben übernehmen ({title})</translation>
    </message>
</context>
<context>
    <name>compare tables</name>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>left | right</source>
        <translation>links | rechts</translation>
    </message>
    <message>
        <source>L* left</source>
        <translation>L* links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>C* left</source>
        <translation>C* links</translation>
    </message>
    <message>
        <source>from wanted</source>
        <translation>vom Ziel</translation>
    </message>
    <message>
        <source>Not calibrated: each colour is a direction, not a match.</source>
        <translation>Nicht kalibriert: Jede Farbe ist eine Richtung, keine Übereinstimmung.</translation>
    </message>
    <message>
        <source>What a programme does to scattering is assumed by its class until a blank coupon has been read.</source>
        <translation>Was ein Programm mit der Streuung macht, wird nach seiner Klasse angenommen, bis ein ungefärbtes Plättchen gemessen ist.</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>{label}, left and right in colour</source>
        <translation>{label}, links und rechts als Farbe</translation>
    </message>
    <message>
        <source>coats, rounds of painting</source>
        <translation>Aufträge, Runden</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>mixing and painting</source>
        <translation>Mischen und Auftragen</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>time, cold to opening</source>
        <translation>Zeit, kalt bis zum Öffnen</translation>
    </message>
    <message>
        <source>class by time</source>
        <translation>Klasse nach Zeit</translation>
    </message>
    <message>
        <source>TP of a bare plate of 1.0 mm</source>
        <translation>TP einer bloßen Platte von 1.0 mm</translation>
    </message>
    <message>
        <source>coats: {label}</source>
        <translation>Aufträge: {label}</translation>
    </message>
</context>
<context>
    <name>compare ways</name>
    <message>
        <source>History</source>
        <translation>Chronik</translation>
    </message>
</context>
<context>
    <name>compare window</name>
    <message>
        <source>The plan as it is</source>
        <translation>Der Plan, wie er ist</translation>
    </message>
    <message>
        <source>Compare</source>
        <translation>Vergleichen</translation>
    </message>
    <message>
        <source>Beside the plan</source>
        <translation>Neben dem Plan</translation>
    </message>
    <message>
        <source>What stands beside the plan</source>
        <translation>Was neben dem Plan steht</translation>
    </message>
    <message>
        <source>Look of both crowns</source>
        <translation>Ansicht beider Kronen</translation>
    </message>
    <message>
        <source>Light on both crowns</source>
        <translation>Licht auf beiden Kronen</translation>
    </message>
    <message>
        <source>Shading</source>
        <translation>Schattierung</translation>
    </message>
    <message>
        <source>Whole crown</source>
        <translation>Ganze Krone</translation>
    </message>
    <message>
        <source>Take the plan at the right</source>
        <translation>Rechten Plan übernehmen</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Licht</translation>
    </message>
    <message>
        <source>Differences</source>
        <translation>Unterschiede</translation>
    </message>
    <message>
        <source>Compare: {title}</source>
        <translation>Vergleich: {title}</translation>
    </message>
    <message>
        <source>coats: {coats}, jars: {jars}, mixing and painting: {minutes:.0f} min</source>
        <translation>Aufträge: {coats}, Näpfe: {jars}, Mischen und Auftragen: {minutes:.0f} min</translation>
    </message>
</context>
<context>
    <name>corrections</name>
    <message>
        <source>the reading is right</source>
        <translation>die Deutung stimmt</translation>
    </message>
    <message>
        <source>Connectors</source>
        <translation>Verbinder</translation>
    </message>
    <message>
        <source>Section of the connector {name}, mm²:</source>
        <translation>Querschnitt des Verbinders {name}, mm²:</translation>
    </message>
    <message>
        <source>set the sections of the connectors</source>
        <translation>die Querschnitte der Verbinder setzen</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>There is no inner surface. Wall to assume, mm:</source>
        <translation>Es gibt keine Innenfläche. Anzunehmende Wand, mm:</translation>
    </message>
    <message>
        <source>assume a wall of {wall_mm:g} mm</source>
        <translation>eine Wand von {wall_mm:g} mm annehmen</translation>
    </message>
</context>
<context>
    <name>coupon dialog</name>
    <message>
        <source>Blank coupon, programme {programme}</source>
        <translation>Ungefärbtes Plättchen, Programm {programme}</translation>
    </message>
    <message>
        <source>An unstained coupon of the block, sintered in this programme, replaces the assumed effect of the programme by a measured one.</source>
        <translation>Ein ungefärbtes Plättchen des Rohlings, in diesem Programm gesintert, ersetzt die angenommene Wirkung des Programms durch eine gemessene.</translation>
    </message>
    <message>
        <source>use a measured factor</source>
        <translation>gemessenen Faktor verwenden</translation>
    </message>
    <message>
        <source>Factor on scattering</source>
        <translation>Faktor auf die Streuung</translation>
    </message>
    <message>
        <source>Factor ({scattering_factor:g} assumed)</source>
        <translation>Faktor ({scattering_factor:g} angenommen)</translation>
    </message>
    <message>
        <source>Read by</source>
        <translation>Gemessen von</translation>
    </message>
    <message>
        <source>Read on</source>
        <translation>Gemessen am</translation>
    </message>
    <message>
        <source>work it out from one reading, 45/0, D65, 2°</source>
        <translation>aus einer Messung ausrechnen, 45/0, D65, 2°</translation>
    </message>
    <message>
        <source>Coupon {axis}</source>
        <translation>Plättchen {axis}</translation>
    </message>
    <message>
        <source>Coupon lies on</source>
        <translation>Plättchen liegt auf</translation>
    </message>
    <message>
        <source>Lies on</source>
        <translation>Liegt auf</translation>
    </message>
    <message>
        <source>Coupon thickness</source>
        <translation>Dicke des Plättchens</translation>
    </message>
    <message>
        <source>Thickness, mm sintered</source>
        <translation>Dicke, mm gesintert</translation>
    </message>
    <message>
        <source>joined by gel or cement</source>
        <translation>mit Gel oder Zement verbunden</translation>
    </message>
    <message>
        <source>Work the factor out</source>
        <translation>Faktor ausrechnen</translation>
    </message>
    <message>
        <source>Scattering {scattering_factor:.2f} times that of the slow programme; dE00 {remaining_de00:.1f} remains.</source>
        <translation>Streuung {scattering_factor:.2f}-mal so groß wie im langsamen Programm; dE00 {remaining_de00:.1f} bleibt.</translation>
    </message>
</context>
<context>
    <name>crown cards</name>
    <message>
        <source>{area}, {coats}, L* {lightness:.1f} ± {plus_minus:.1f}, C* {chroma:.1f}, h {hue_degrees:.0f} degrees, {wall}</source>
        <translation>{area}, {coats}, L* {lightness:.1f} ± {plus_minus:.1f}, C* {chroma:.1f}, h {hue_degrees:.0f} Grad, {wall}</translation>
    </message>
    <message>
        <source>Reading under the pointer</source>
        <translation>Messung unter dem Zeiger</translation>
    </message>
    <message>
        <source>Legend of zones</source>
        <translation>Legende der Zonen</translation>
    </message>
    <message>
        <source>zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>on top, dashed</source>
        <translation>obenauf, gestrichelt</translation>
    </message>
    <message>
        <source>Legend of coats</source>
        <translation>Legende der Aufträge</translation>
    </message>
    <message>
        <source>{title}, 0 to {most} coats</source>
        <translation>{title}, 0 bis {most} Aufträge</translation>
    </message>
</context>
<context>
    <name>crown desk</name>
    <message>
        <source>{does}, moves the margin</source>
        <translation>{does}, verschiebt den Kronenrand</translation>
    </message>
    <message>
        <source>step {step}, {liquid}</source>
        <translation>Schritt {step}, {liquid}</translation>
    </message>
    <message>
        <source>all steps together</source>
        <translation>alle Schritte zusammen</translation>
    </message>
</context>
<context>
    <name>crown overlay</name>
    <message>
        <source>Marks on the crown</source>
        <translation>Marken auf der Krone</translation>
    </message>
    <message>
        <source>No crown is open</source>
        <translation>Keine Krone ist offen</translation>
    </message>
    <message>
        <source>A crown is being read</source>
        <translation>Eine Krone wird gelesen</translation>
    </message>
</context>
<context>
    <name>crown questions</name>
    <message>
        <source>Click the connector, where it is narrowest. The right button turns the crown.</source>
        <translation>Klicken Sie auf den Verbinder, wo er am schmalsten ist. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Click connector {number} of {count}, where it is narrowest. The right button turns the crown.</source>
        <translation>Klicken Sie auf Verbinder {number} von {count}, wo er am schmalsten ist. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Where do the units part?</source>
        <translation>Wo trennen sich die Einheiten?</translation>
    </message>
    <message>
        <source>Where is its outer side?</source>
        <translation>Wo ist ihre Außenseite?</translation>
    </message>
    <message>
        <source>That is its biting side.</source>
        <translation>Das ist ihre Kauseite.</translation>
    </message>
    <message>
        <source>place the screw channel</source>
        <translation>den Schraubenkanal setzen</translation>
    </message>
</context>
<context>
    <name>crown stage</name>
    <message>
        <source>Crown</source>
        <translation>Krone</translation>
    </message>
    <message>
        <source>a mesh that has not been read yet</source>
        <translation>ein Netz, das noch nicht gelesen ist</translation>
    </message>
    <message>
        <source>Crown, not read yet</source>
        <translation>Krone, noch nicht gelesen</translation>
    </message>
    <message>
        <source>Crown, {look}</source>
        <translation>Krone, {look}</translation>
    </message>
</context>
<context>
    <name>crown view</name>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
</context>
<context>
    <name>cut tool</name>
    <message>
        <source>Cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Tilt</source>
        <translation>Kippung</translation>
    </message>
    <message>
        <source>Lean</source>
        <translation>Neigung</translation>
    </message>
    <message>
        <source>close the cut with a flat base</source>
        <translation>Schnitt mit flachem Boden schließen</translation>
    </message>
    <message>
        <source>One step of undo. The file in the case stays whole.</source>
        <translation>Ein Schritt zum Rückgängigmachen. Die Datei im Fall bleibt ganz.</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Schneiden</translation>
    </message>
    <message>
        <source>{name} of the plane</source>
        <translation>{name} der Ebene</translation>
    </message>
    <message>
        <source>{name} of the plane, number</source>
        <translation>{name} der Ebene, Zahl</translation>
    </message>
    <message>
        <source>Plane of the cut</source>
        <translation>Schnittebene</translation>
    </message>
    <message>
        <source>Lay the plane through the neck; what lies below it is cut away.</source>
        <translation>Legen Sie die Ebene durch den Zahnhals; was darunter liegt, wird abgeschnitten.</translation>
    </message>
    <message>
        <source>Click the crown that is meant: only that is kept.</source>
        <translation>Klicken Sie auf die gemeinte Krone: Nur sie bleibt.</translation>
    </message>
</context>
<context>
    <name>display check dialog</name>
    <message>
        <source>this display has not been judged yet</source>
        <translation>dieser Bildschirm ist noch nicht beurteilt</translation>
    </message>
    <message>
        <source>Lines around a grey</source>
        <translation>Linien um ein Grau</translation>
    </message>
    <message>
        <source>Dark squares on black</source>
        <translation>Dunkle Quadrate auf Schwarz</translation>
    </message>
    <message>
        <source>Slightly lighter squares on a tooth colour</source>
        <translation>Etwas hellere Quadrate auf einer Zahnfarbe</translation>
    </message>
    <message>
        <source>Check the display</source>
        <translation>Bildschirm prüfen</translation>
    </message>
    <message>
        <source>Sit as you work, let the display warm up, turn off night colours. Whether its white is right no eye can tell: set it to D65 (6500 K).</source>
        <translation>Sitzen Sie wie bei der Arbeit, lassen Sie den Bildschirm warm werden, schalten Sie Nachtfarben aus. Ob sein Weiß stimmt, sieht kein Auge: Stellen Sie es auf D65 (6500 K).</translation>
    </message>
    <message>
        <source>Grey in the middle</source>
        <translation>Grau in der Mitte</translation>
    </message>
    <message>
        <source>Dark squares seen</source>
        <translation>Gesehene dunkle Quadrate</translation>
    </message>
    <message>
        <source>Lighter squares seen</source>
        <translation>Gesehene hellere Quadrate</translation>
    </message>
    <message>
        <source>1  Screw up your eyes: move the slider until the grey vanishes in the lines.</source>
        <translation>1  Augen zusammenkneifen: Regler schieben, bis das Grau in den Linien verschwindet.</translation>
    </message>
    <message>
        <source>2  How many squares stand out from the black?</source>
        <translation>2  Wie viele Quadrate heben sich vom Schwarz ab?</translation>
    </message>
    <message>
        <source>3  How many squares are lighter than the tooth colour around them?</source>
        <translation>3  Wie viele Quadrate sind heller als die Zahnfarbe um sie?</translation>
    </message>
    <message>
        <source>What follows</source>
        <translation>Was daraus folgt</translation>
    </message>
</context>
<context>
    <name>film card</name>
    <message>
        <source>Coat that is shown</source>
        <translation>Gezeigter Auftrag</translation>
    </message>
    <message>
        <source>Film of the plan</source>
        <translation>Film des Plans</translation>
    </message>
    <message>
        <source>play</source>
        <translation>abspielen</translation>
    </message>
    <message>
        <source>Play the film</source>
        <translation>Film abspielen</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>One coat back</source>
        <translation>Einen Auftrag zurück</translation>
    </message>
    <message>
        <source>on</source>
        <translation>weiter</translation>
    </message>
    <message>
        <source>One coat on</source>
        <translation>Einen Auftrag weiter</translation>
    </message>
    <message>
        <source>slower</source>
        <translation>langsamer</translation>
    </message>
    <message>
        <source>Play slower</source>
        <translation>Langsamer abspielen</translation>
    </message>
    <message>
        <source>faster</source>
        <translation>schneller</translation>
    </message>
    <message>
        <source>Play faster</source>
        <translation>Schneller abspielen</translation>
    </message>
    <message>
        <source>save...</source>
        <translation>speichern...</translation>
    </message>
    <message>
        <source>Save the film as pictures</source>
        <translation>Film als Bilder speichern</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>Close the film</source>
        <translation>Film schließen</translation>
    </message>
    <message>
        <source>pause</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Pause the film</source>
        <translation>Film anhalten</translation>
    </message>
    <message>
        <source>{name} (space bar on the crown)</source>
        <translation>{name} (Leertaste auf der Krone)</translation>
    </message>
</context>
<context>
    <name>film desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>The plan is another one now, so the film is over.</source>
        <translation>Der Plan ist jetzt ein anderer, darum ist der Film vorbei.</translation>
    </message>
    <message>
        <source>The plan, coat after coat</source>
        <translation>Der Plan, Auftrag für Auftrag</translation>
    </message>
    <message>
        <source>Making the film</source>
        <translation>Film wird gemacht</translation>
    </message>
    <message>
        <source>Save the film</source>
        <translation>Film speichern</translation>
    </message>
    <message>
        <source>Saved the film as {path}.</source>
        <translation>Film als {path} gespeichert.</translation>
    </message>
    <message>
        <source>Saved {count} pictures, the first as {path}.</source>
        <translation>{count} Bilder gespeichert, das erste als {path}.</translation>
    </message>
    <message>
        <source>Saving the film</source>
        <translation>Film wird gespeichert</translation>
    </message>
</context>
<context>
    <name>flat desk</name>
    <message>
        <source>being laid flat</source>
        <translation>wird flach gelegt</translation>
    </message>
    <message>
        <source>here once the crown has been read</source>
        <translation>hier, sobald die Krone gelesen ist</translation>
    </message>
    <message>
        <source>Laying the crown flat</source>
        <translation>Krone wird flach gelegt</translation>
    </message>
    <message>
        <source>ruled: drawn more than twice, or less than half, its size</source>
        <translation>liniert: mehr als doppelt oder weniger als halb so groß gezeichnet</translation>
    </message>
    <message>
        <source>{front} and {back}</source>
        <translation>{front} und {back}</translation>
    </message>
</context>
<context>
    <name>flat pane</name>
    <message>
        <source>Flat view {text}</source>
        <translation>Flache Ansicht {text}</translation>
    </message>
    <message>
        <source>Flat views</source>
        <translation>Flache Ansichten</translation>
    </message>
    <message>
        <source>{word} ({letter} on the flat views)</source>
        <translation>{word} ({letter} auf den flachen Ansichten)</translation>
    </message>
    <message>
        <source>Unit {number}</source>
        <translation>Einheit {number}</translation>
    </message>
    <message>
        <source>Unit {number} (Page up, Page down on the flat views)</source>
        <translation>Einheit {number} (Bild auf, Bild ab auf den flachen Ansichten)</translation>
    </message>
    <message>
        <source>below</source>
        <translation>unten</translation>
    </message>
    <message>
        <source>beside</source>
        <translation>daneben</translation>
    </message>
    <message>
        <source>Flat views below the crown</source>
        <translation>Flache Ansichten unter der Krone</translation>
    </message>
    <message>
        <source>Flat views beside the crown</source>
        <translation>Flache Ansichten neben der Krone</translation>
    </message>
</context>
<context>
    <name>flat view</name>
    <message>
        <source>Flat view, {caption}</source>
        <translation>Flache Ansicht, {caption}</translation>
    </message>
    <message>
        <source>Drawing a flat view</source>
        <translation>Flache Ansicht wird gezeichnet</translation>
    </message>
</context>
<context>
    <name>gl canvas</name>
    <message>
        <source>Crown picture</source>
        <translation>Bild der Krone</translation>
    </message>
</context>
<context>
    <name>guided card</name>
    <message>
        <source>Guided first plan</source>
        <translation>Geführter erster Plan</translation>
    </message>
    <message>
        <source>keep this crown</source>
        <translation>diese Krone behalten</translation>
    </message>
    <message>
        <source>Work with the crown that is open</source>
        <translation>Mit der offenen Krone arbeiten</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>One step back</source>
        <translation>Einen Schritt zurück</translation>
    </message>
    <message>
        <source>skip</source>
        <translation>überspringen</translation>
    </message>
    <message>
        <source>Skip this step</source>
        <translation>Diesen Schritt überspringen</translation>
    </message>
    <message>
        <source>end</source>
        <translation>beenden</translation>
    </message>
    <message>
        <source>End the guided first plan</source>
        <translation>Den geführten ersten Plan beenden</translation>
    </message>
    <message>
        <source>step {at} of {count}</source>
        <translation>Schritt {at} von {count}</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>Ring about what is meant</source>
        <translation>Ring um das Gemeinte</translation>
    </message>
</context>
<context>
    <name>help</name>
    <message>
        <source>&lt;p&gt;&lt;b&gt;Stain liquids are acidic solutions of metal salts.&lt;/b&gt; Gloves, goggles, and air
that is drawn away; keep to their safety data sheets. No liquid goes back into its bottle.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Ceramic dust&lt;/b&gt; from milling and from cleaning is drawn off and not breathed in.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Ovens and fresh work are hot.&lt;/b&gt; Crowns dry before they are sintered; wet ones crack.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Thin walls break.&lt;/b&gt; Keep to the smallest wall the maker of the block allows.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;What is shown is a prediction&lt;/b&gt; with a stated uncertainty: a direction, not a match. The
materials that come with the program are invented, for demonstration: do not fire by them. The
makers&apos; instructions for use, local rules and licensed practice decide.&lt;/p&gt;</source>
        <translation>&lt;p&gt;&lt;b&gt;Färbeflüssigkeiten sind saure Lösungen von Metallsalzen.&lt;/b&gt; Handschuhe, Schutzbrille und
abgesaugte Luft; beachten Sie die Sicherheitsdatenblätter. Keine Flüssigkeit kommt in ihre Flasche zurück.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Keramikstaub&lt;/b&gt; vom Fräsen und Reinigen wird abgesaugt und nicht eingeatmet.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Öfen und frische Arbeiten sind heiß.&lt;/b&gt; Kronen trocknen, bevor sie gesintert werden; nasse reißen.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Dünne Wände brechen.&lt;/b&gt; Halten Sie die kleinste Wand ein, die der Hersteller des Rohlings zulässt.&lt;/p&gt;
&lt;p&gt;&lt;b&gt;Gezeigt wird eine Vorhersage&lt;/b&gt; mit angegebener Unsicherheit: eine Richtung, keine Übereinstimmung. Die
Materialien, die mit dem Programm kommen, sind erfunden, zur Vorführung: Brennen Sie nicht danach. Es
entscheiden die Gebrauchsanweisungen der Hersteller, örtliche Vorschriften und die zugelassene Praxis.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>&lt;table cellpadding=&quot;3&quot;&gt;
&lt;tr&gt;&lt;td&gt;turn&lt;/td&gt;&lt;td&gt;right drag, arrow keys&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;shift&lt;/td&gt;&lt;td&gt;middle drag, Shift and right drag, Shift and arrow keys&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;zoom at the pointer&lt;/td&gt;&lt;td&gt;wheel; plus and minus&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;whole crown&lt;/td&gt;&lt;td&gt;Home, Ctrl+0&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;occlusal, buccal, lingual, mesial, distal, inner&lt;/td&gt;&lt;td&gt;Ctrl+1 to Ctrl+6;
O B L M D I on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;flat views; which of them; which unit&lt;/td&gt;&lt;td&gt;Ctrl+F; W (rosette) O B L M D, A for
all; Page up, Page down, on the flat views&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;check the place under the pointer; section there; all lights&lt;/td&gt;
&lt;td&gt;Ctrl+K; Ctrl+J; Ctrl+L&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;in the row: value alone&lt;/td&gt;&lt;td&gt;V on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;before the last step; the bare block&lt;/td&gt;&lt;td&gt;H, Shift+H held on the crown&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;compare plans; history; film of the plan&lt;/td&gt;&lt;td&gt;Ctrl+D; Ctrl+H; Ctrl+M&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;looks&lt;/td&gt;&lt;td&gt;Alt and the number on the bar&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;paint&lt;/td&gt;&lt;td&gt;left drag; Esc takes the stroke back; with Alt, or with
Crown, Brush moves the margin, a zone goes over the margin and takes it along&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;back from a question, a message, a reading&lt;/td&gt;&lt;td&gt;Esc&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;brush, eraser&lt;/td&gt;&lt;td&gt;P, E; [ and ] change the size&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;fill up to creases, line along a crease&lt;/td&gt;&lt;td&gt;F, C; click or Return on the crown,
Shift takes away, left drag turns, Esc goes back&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;chosen area: grow, shrink, smooth its edge&lt;/td&gt;&lt;td&gt;G, Shift+G, S&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;mirror mesial-distal, streaks, reset to the proposal&lt;/td&gt;&lt;td&gt;X, T, R&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;coats&lt;/td&gt;&lt;td&gt;digits in the table, 2-3 for a span, plus, minus, Delete; L locks a cell
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;range of coats; copy, paste; move a step&lt;/td&gt;&lt;td&gt;Shift and arrows; Ctrl+C, Ctrl+V;
Ctrl+Shift with Left, Right, or drag its head&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;suggest coats; intake; tray, its sheets&lt;/td&gt;&lt;td&gt;Ctrl+G; Ctrl+I; Ctrl+T, Ctrl+P
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;next part of the window, part before&lt;/td&gt;&lt;td&gt;F6, Shift+F6&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;settings; manual, at the page for what has the keyboard; this list&lt;/td&gt;
&lt;td&gt;Ctrl+comma; F1; Ctrl+F1&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;paint an area instead of a step&lt;/td&gt;&lt;td&gt;choose its name (Left from the first step)&lt;/td&gt;&lt;/tr&gt;
&lt;/table&gt;</source>
        <translation>&lt;table cellpadding=&quot;3&quot;&gt;
&lt;tr&gt;&lt;td&gt;drehen&lt;/td&gt;&lt;td&gt;rechts ziehen, Pfeiltasten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;verschieben&lt;/td&gt;&lt;td&gt;Mitte ziehen, Umschalt und rechts ziehen, Umschalt und Pfeiltasten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;am Zeiger vergrößern&lt;/td&gt;&lt;td&gt;Rad; Plus und Minus&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;ganze Krone&lt;/td&gt;&lt;td&gt;Pos1, Strg+0&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;okklusal, bukkal, lingual, mesial, distal, innen&lt;/td&gt;&lt;td&gt;Strg+1 bis Strg+6;
O B L M D I auf der Krone&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;flache Ansichten; welche davon; welche Einheit&lt;/td&gt;&lt;td&gt;Strg+F; W (Rosette) O B L M D, A für
alle; Bild auf, Bild ab, auf den flachen Ansichten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Stelle unter dem Zeiger prüfen; Schnitt dort; alle Lichter&lt;/td&gt;
&lt;td&gt;Strg+K; Strg+J; Strg+L&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;in der Reihe: nur Helligkeit&lt;/td&gt;&lt;td&gt;V auf der Krone&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;vor dem letzten Schritt; der bloße Rohling&lt;/td&gt;&lt;td&gt;H, Umschalt+H auf der Krone gehalten&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Pläne vergleichen; Chronik; Film des Plans&lt;/td&gt;&lt;td&gt;Strg+D; Strg+H; Strg+M&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Ansichten&lt;/td&gt;&lt;td&gt;Alt und die Zahl auf der Leiste&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;malen&lt;/td&gt;&lt;td&gt;links ziehen; Esc nimmt den Strich zurück; mit Alt oder mit
Krone, Pinsel verschiebt den Kronenrand, geht eine Zone über den Rand und nimmt ihn mit&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;zurück von einer Frage, einer Meldung, einem Lesen&lt;/td&gt;&lt;td&gt;Esc&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Pinsel, Radierer&lt;/td&gt;&lt;td&gt;P, E; [ und ] ändern die Größe&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;bis zu den Furchen füllen, Linie entlang einer Furche&lt;/td&gt;&lt;td&gt;F, C; Klick oder Eingabe auf der Krone,
Umschalt nimmt weg, links ziehen dreht, Esc geht zurück&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;gewählte Fläche: vergrößern, verkleinern, Rand glätten&lt;/td&gt;&lt;td&gt;G, Umschalt+G, S&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;mesial-distal spiegeln, Streifen, auf den Vorschlag zurücksetzen&lt;/td&gt;&lt;td&gt;X, T, R&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Aufträge&lt;/td&gt;&lt;td&gt;Ziffern in der Tabelle, 2-3 für eine Spanne, Plus, Minus, Entf; L sperrt eine Zelle
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Bereich von Aufträgen; kopieren, einfügen; einen Schritt verschieben&lt;/td&gt;&lt;td&gt;Umschalt und Pfeile; Strg+C, Strg+V;
Strg+Umschalt mit Links, Rechts, oder am Kopf ziehen&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Aufträge vorschlagen; Aufnahme; Tablett, seine Blätter&lt;/td&gt;&lt;td&gt;Strg+G; Strg+I; Strg+T, Strg+P
&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;nächster Teil des Fensters, Teil davor&lt;/td&gt;&lt;td&gt;F6, Umschalt+F6&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;Einstellungen; Handbuch, auf der Seite zu dem, was die Tastatur hat; diese Liste&lt;/td&gt;
&lt;td&gt;Strg+Komma; F1; Strg+F1&lt;/td&gt;&lt;/tr&gt;
&lt;tr&gt;&lt;td&gt;eine Fläche statt eines Schritts malen&lt;/td&gt;&lt;td&gt;ihren Namen wählen (Links vom ersten Schritt)&lt;/td&gt;&lt;/tr&gt;
&lt;/table&gt;</translation>
    </message>
    <message>
        <source>no key</source>
        <translation>keine Taste</translation>
    </message>
    <message>
        <source>Changed in the settings</source>
        <translation>In den Einstellungen geändert</translation>
    </message>
    <message>
        <source>Keys and mouse</source>
        <translation>Tasten und Maus</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>&lt;p&gt;Plans the staining of milled zirconia crowns and bridges before they are sintered.&lt;/p&gt;&lt;p&gt;A planning aid with stated uncertainty; not a shade guarantee and not medical advice.&lt;/p&gt;</source>
        <translation>&lt;p&gt;Plant das Färben gefräster Zirkonoxidkronen und -brücken vor dem Sintern.&lt;/p&gt;&lt;p&gt;Eine Planungshilfe mit angegebener Unsicherheit; keine Gewähr für eine Zahnfarbe und kein ärztlicher Rat.&lt;/p&gt;</translation>
    </message>
</context>
<context>
    <name>history desk</name>
    <message>
        <source>as it was opened</source>
        <translation>wie geöffnet</translation>
    </message>
    <message>
        <source>no step yet</source>
        <translation>noch kein Schritt</translation>
    </message>
    <message>
        <source>1 step</source>
        <translation>1 Schritt</translation>
    </message>
    <message>
        <source>{steps} steps</source>
        <translation>{steps} Schritte</translation>
    </message>
    <message>
        <source>{words}, {undone} undone</source>
        <translation>{words}, {undone} zurückgenommen</translation>
    </message>
    <message>
        <source>Small pictures</source>
        <translation>Kleine Bilder</translation>
    </message>
</context>
<context>
    <name>history list</name>
    <message>
        <source>Step {number}, {label}, where the case stands now</source>
        <translation>Schritt {number}, {label}, hier steht der Fall</translation>
    </message>
    <message>
        <source>Step {number}, {label}, undone</source>
        <translation>Schritt {number}, {label}, zurückgenommen</translation>
    </message>
    <message>
        <source>Step {number}, {label}</source>
        <translation>Schritt {number}, {label}</translation>
    </message>
    <message>
        <source>Steps of the history</source>
        <translation>Schritte der Chronik</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Chronik</translation>
    </message>
    <message>
        <source>Kept until the case is closed; the file holds the last state.</source>
        <translation>Wird bis zum Schließen des Falls behalten; die Datei enthält den letzten Stand.</translation>
    </message>
</context>
<context>
    <name>intake desk</name>
    <message>
        <source>front teeth</source>
        <translation>Frontzähne</translation>
    </message>
    <message>
        <source>premolars</source>
        <translation>Prämolaren</translation>
    </message>
    <message>
        <source>molars</source>
        <translation>Molaren</translation>
    </message>
    <message>
        <source>{problem} The shipped shades are used.</source>
        <translation>{problem} Die mitgelieferten Farben werden verwendet.</translation>
    </message>
    <message>
        <source>fill in the intake page</source>
        <translation>die Aufnahmeseite ausfüllen</translation>
    </message>
    <message>
        <source>set what is wanted</source>
        <translation>das Ziel setzen</translation>
    </message>
    <message>
        <source>bridge of {count} units, {first} to {last}</source>
        <translation>Brücke aus {count} Einheiten, {first} bis {last}</translation>
    </message>
    <message>
        <source>{code}, {teeth}. Nothing here is required; leave out what is not known.</source>
        <translation>{code}, {teeth}. Nichts hier ist Pflicht; lassen Sie weg, was nicht bekannt ist.</translation>
    </message>
    <message>
        <source>The table of tabs was changed on this computer.</source>
        <translation>Die Tabelle der Farbmuster wurde an diesem Rechner geändert.</translation>
    </message>
    <message>
        <source>Kept as the usual offsets of {class_words}.</source>
        <translation>Als übliche Abstände für {class_words} behalten.</translation>
    </message>
</context>
<context>
    <name>intake dialog</name>
    <message>
        <source>not known yet</source>
        <translation>noch nicht bekannt</translation>
    </message>
    <message>
        <source>a prepared tooth</source>
        <translation>einem präparierten Zahn</translation>
    </message>
    <message>
        <source>a base on an implant</source>
        <translation>einer Basis auf einem Implantat</translation>
    </message>
    <message>
        <source>The middle third is what the body is held to. A third that is not read follows it: the gradient from neck to edge comes from the offsets.</source>
        <translation>Am mittleren Drittel wird der Körper gemessen. Ein nicht abgelesenes Drittel folgt ihm: Der Verlauf vom Hals zur Schneide kommt aus den Abständen.</translation>
    </message>
    <message>
        <source>Intake</source>
        <translation>Aufnahme</translation>
    </message>
    <message>
        <source>Wanted shade, by thirds</source>
        <translation>Gewünschte Farbe, nach Dritteln</translation>
    </message>
    <message>
        <source>from a photograph...</source>
        <translation>aus einem Foto...</translation>
    </message>
    <message>
        <source>table of tabs...</source>
        <translation>Tabelle der Farbmuster...</translation>
    </message>
    <message>
        <source>read as</source>
        <translation>abgelesen als</translation>
    </message>
    <message>
        <source>screen</source>
        <translation>Schirm</translation>
    </message>
    <message>
        <source>L* a* b* as compared,  ±</source>
        <translation>L* a* b* für den Vergleich,  ±</translation>
    </message>
    <message>
        <source>Geometry of the reading</source>
        <translation>Geometrie der Messung</translation>
    </message>
    <message>
        <source>Light of the reading</source>
        <translation>Licht der Messung</translation>
    </message>
    <message>
        <source>L*a*b* measured in</source>
        <translation>L*a*b* gemessen in</translation>
    </message>
    <message>
        <source>Neighbours</source>
        <translation>Nachbarn</translation>
    </message>
    <message>
        <source>Neighbour {line}</source>
        <translation>Nachbar {line}</translation>
    </message>
    <message>
        <source>neighbour {line}</source>
        <translation>Nachbar {line}</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Stands on</source>
        <translation>Steht auf</translation>
    </message>
    <message>
        <source>Stump or base</source>
        <translation>Stumpf oder Basis</translation>
    </message>
    <message>
        <source>Cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>stands on</source>
        <translation>steht auf</translation>
    </message>
    <message>
        <source>cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>The dentist&apos;s wish</source>
        <translation>Wunsch der Zahnärztin, des Zahnarztes</translation>
    </message>
    <message>
        <source>in their words</source>
        <translation>in deren Worten</translation>
    </message>
    <message>
        <source>cusps</source>
        <translation>Höcker</translation>
    </message>
    <message>
        <source>neighbour {number}</source>
        <translation>Nachbar {number}</translation>
    </message>
    <message>
        <source>{name} again</source>
        <translation>{name} noch einmal</translation>
    </message>
    <message>
        <source>convert by {ways}</source>
        <translation>umrechnen durch {ways}</translation>
    </message>
    <message>
        <source>Without the conversion, no difference to a prediction at 45/0, D65 is shown.</source>
        <translation>Ohne die Umrechnung wird kein Unterschied zu einer Vorhersage in 45/0, D65 gezeigt.</translation>
    </message>
    <message>
        <source>base</source>
        <translation>Basis</translation>
    </message>
    <message>
        <source>stump</source>
        <translation>Stumpf</translation>
    </message>
    <message>
        <source>The wish is {over} characters too long.</source>
        <translation>Der Wunsch ist um {over} Zeichen zu lang.</translation>
    </message>
    <message>
        <source>Assumed behind the crown: {stump}.</source>
        <translation>Hinter der Krone angenommen: {stump}.</translation>
    </message>
    <message>
        <source>Converted by {name}: {rows}.</source>
        <translation>Umgerechnet durch {name}: {rows}.</translation>
    </message>
</context>
<context>
    <name>jar rows</name>
    <message>
        <source>jar</source>
        <translation>Napf</translation>
    </message>
    <message>
        <source>drops</source>
        <translation>Tropfen</translation>
    </message>
    <message>
        <source>dye</source>
        <translation>Farbstoff</translation>
    </message>
    <message>
        <source>on chalk</source>
        <translation>auf Kreide</translation>
    </message>
    <message>
        <source>takes, drops</source>
        <translation>braucht, Tropfen</translation>
    </message>
    <message>
        <source>enough for</source>
        <translation>reicht für</translation>
    </message>
    <message>
        <source>smallest jar</source>
        <translation>kleinster Napf</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>jar {number}: {look}</source>
        <translation>Napf {number}: {look}</translation>
    </message>
    <message>
        <source>{drops} drops</source>
        <translation>{drops} Tropfen</translation>
    </message>
</context>
<context>
    <name>keys</name>
    <message>
        <source>shows all flat views</source>
        <translation>zeigt alle flachen Ansichten</translation>
    </message>
    <message>
        <source>shows the rosette</source>
        <translation>zeigt die Rosette</translation>
    </message>
    <message>
        <source>looks from occlusal</source>
        <translation>blickt von okklusal</translation>
    </message>
    <message>
        <source>looks from buccal</source>
        <translation>blickt von bukkal</translation>
    </message>
    <message>
        <source>looks from lingual, and locks a cell of the coat table</source>
        <translation>blickt von lingual und sperrt eine Zelle der Auftragstabelle</translation>
    </message>
    <message>
        <source>looks from mesial</source>
        <translation>blickt von mesial</translation>
    </message>
    <message>
        <source>looks from distal</source>
        <translation>blickt von distal</translation>
    </message>
    <message>
        <source>looks at the inner surface</source>
        <translation>blickt auf die Innenfläche</translation>
    </message>
    <message>
        <source>shows the crown before the last step</source>
        <translation>zeigt die Krone vor dem letzten Schritt</translation>
    </message>
    <message>
        <source>shows the bare block</source>
        <translation>zeigt den bloßen Rohling</translation>
    </message>
    <message>
        <source>zooms, and adds a coat</source>
        <translation>vergrößert und gibt einen Auftrag dazu</translation>
    </message>
    <message>
        <source>zooms, and takes a coat away</source>
        <translation>verkleinert und nimmt einen Auftrag weg</translation>
    </message>
    <message>
        <source>zooms</source>
        <translation>vergrößert</translation>
    </message>
    <message>
        <source>makes the brush smaller</source>
        <translation>macht den Pinsel kleiner</translation>
    </message>
    <message>
        <source>makes the brush larger</source>
        <translation>macht den Pinsel größer</translation>
    </message>
    <message>
        <source>shows the whole crown</source>
        <translation>zeigt die ganze Krone</translation>
    </message>
    <message>
        <source>shows the unit before</source>
        <translation>zeigt die Einheit davor</translation>
    </message>
    <message>
        <source>shows the next unit</source>
        <translation>zeigt die nächste Einheit</translation>
    </message>
    <message>
        <source>moves and turns</source>
        <translation>bewegt und dreht</translation>
    </message>
    <message>
        <source>shifts the crown</source>
        <translation>verschiebt die Krone</translation>
    </message>
    <message>
        <source>chooses</source>
        <translation>wählt</translation>
    </message>
    <message>
        <source>takes back what was begun last</source>
        <translation>nimmt zurück, was zuletzt begonnen wurde</translation>
    </message>
    <message>
        <source>goes to the next part of the window</source>
        <translation>geht zum nächsten Teil des Fensters</translation>
    </message>
    <message>
        <source>goes to the part before</source>
        <translation>geht zum Teil davor</translation>
    </message>
    <message>
        <source>clears coats</source>
        <translation>leert Aufträge</translation>
    </message>
    <message>
        <source>changes coats where they stand</source>
        <translation>ändert Aufträge an ihrem Platz</translation>
    </message>
    <message>
        <source>goes to the menus</source>
        <translation>geht zu den Menüs</translation>
    </message>
    <message>
        <source>copies</source>
        <translation>kopiert</translation>
    </message>
    <message>
        <source>cuts</source>
        <translation>schneidet aus</translation>
    </message>
    <message>
        <source>pastes</source>
        <translation>fügt ein</translation>
    </message>
    <message>
        <source>selects all</source>
        <translation>wählt alles</translation>
    </message>
    <message>
        <source>opens the menu of what has the keyboard</source>
        <translation>öffnet das Menü dessen, was die Tastatur hat</translation>
    </message>
    <message>
        <source>types coats into the table</source>
        <translation>tippt Aufträge in die Tabelle</translation>
    </message>
    <message>
        <source>{key} is the key of {command}. Take another, or free it there first.</source>
        <translation>{key} ist die Taste für {command}. Nehmen Sie eine andere, oder machen Sie sie dort zuerst frei.</translation>
    </message>
    <message>
        <source>{key} {does}. Take another.</source>
        <translation>{key} {does}. Nehmen Sie eine andere.</translation>
    </message>
    <message>
        <source>{key} opens the menu {menu}. Take another.</source>
        <translation>{key} öffnet das Menü {menu}. Nehmen Sie eine andere.</translation>
    </message>
</context>
<context>
    <name>legends</name>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>Legend of the look</source>
        <translation>Legende der Ansicht</translation>
    </message>
    <message>
        <source>Depth of grinding</source>
        <translation>Schleiftiefe</translation>
    </message>
    <message>
        <source>Grinding is being worked out</source>
        <translation>Beschleifen wird ausgerechnet</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop working out the ground crown</source>
        <translation>Berechnung der beschliffenen Krone anhalten</translation>
    </message>
    <message>
        <source>Ground by {depth:.1f} millimetres</source>
        <translation>Um {depth:.1f} Millimeter beschliffen</translation>
    </message>
    <message>
        <source>outer surface ground by</source>
        <translation>Außenfläche beschliffen um</translation>
    </message>
    <message>
        <source>walls thinner by as much; polished again</source>
        <translation>Wände um so viel dünner; neu poliert</translation>
    </message>
</context>
<context>
    <name>lights</name>
    <message>
        <source>daylight</source>
        <translation>Tageslicht</translation>
    </message>
    <message>
        <source>warm daylight</source>
        <translation>warmes Tageslicht</translation>
    </message>
    <message>
        <source>filament lamp</source>
        <translation>Glühlampe</translation>
    </message>
    <message>
        <source>daylight, older standard</source>
        <translation>Tageslicht, ältere Norm</translation>
    </message>
    <message>
        <source>white LED</source>
        <translation>weiße LED</translation>
    </message>
    <message>
        <source>fluorescent lamp, cool white</source>
        <translation>Leuchtstofflampe, kaltweiß</translation>
    </message>
    <message>
        <source>fluorescent lamp, three bands</source>
        <translation>Leuchtstofflampe, drei Banden</translation>
    </message>
    <message>
        <source>Fluorescence is not modelled.</source>
        <translation>Fluoreszenz wird nicht nachgebildet.</translation>
    </message>
    <message>
        <source>dE00 {de00:.1f}, {light} to {other}</source>
        <translation>dE00 {de00:.1f}, {light} zu {other}</translation>
    </message>
</context>
<context>
    <name>lights dialog</name>
    <message>
        <source>Under all lights</source>
        <translation>Unter allen Lichtern</translation>
    </message>
    <message>
        <source>What the crown looks like to an eye that is used to each light. Where an area changes more than the teeth beside it, it stands out under that light.</source>
        <translation>Wie die Krone einem Auge erscheint, das an das jeweilige Licht gewöhnt ist. Wo sich eine Fläche mehr ändert als die Zähne daneben, fällt sie unter diesem Licht auf.</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>largest change</source>
        <translation>größte Änderung</translation>
    </message>
    <message>
        <source>{name} under {light}</source>
        <translation>{name} unter {light}</translation>
    </message>
    <message>
        <source>{lights}; {degrees}° observer. {fluorescence}</source>
        <translation>{lights}; {degrees}°-Beobachter. {fluorescence}</translation>
    </message>
</context>
<context>
    <name>look bar</name>
    <message>
        <source>Sintered</source>
        <translation>Gesintert</translation>
    </message>
    <message>
        <source>Predicted colour after sintering</source>
        <translation>Vorhergesagte Farbe nach dem Sintern</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Am Tisch</translation>
    </message>
    <message>
        <source>Chalky ceramic with the dyes of the jars</source>
        <translation>Kreidige Keramik mit den Farbstoffen der Näpfe</translation>
    </message>
    <message>
        <source>Zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>Zones and accents, colour and hatch</source>
        <translation>Zonen und Akzente, Farbe und Schraffur</translation>
    </message>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Number of coats of the chosen step</source>
        <translation>Zahl der Aufträge des gewählten Schritts</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Helligkeit</translation>
    </message>
    <message>
        <source>L* only, in greys</source>
        <translation>nur L*, in Grautönen</translation>
    </message>
    <message>
        <source>Offset</source>
        <translation>Abstand</translation>
    </message>
    <message>
        <source>Difference to what is wanted</source>
        <translation>Unterschied zum Ziel</translation>
    </message>
    <message>
        <source>Thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>Wall, about the block&apos;s minimum</source>
        <translation>Wand, um das Mindestmaß des Rohlings</translation>
    </message>
    <message>
        <source>In the row</source>
        <translation>In der Reihe</translation>
    </message>
    <message>
        <source>Between its neighbours in the arch</source>
        <translation>Zwischen ihren Nachbarn im Zahnbogen</translation>
    </message>
    <message>
        <source>Ground</source>
        <translation>Beschliffen</translation>
    </message>
    <message>
        <source>What shows after occlusal adjustment</source>
        <translation>Was nach dem Einschleifen zu sehen ist</translation>
    </message>
    <message>
        <source>Look {name}</source>
        <translation>Ansicht {name}</translation>
    </message>
    <message>
        <source>{hint} (Alt+{number})</source>
        <translation>{hint} (Alt+{number})</translation>
    </message>
    <message>
        <source>Looks</source>
        <translation>Ansichten</translation>
    </message>
    <message>
        <source>Shading</source>
        <translation>Schattierung</translation>
    </message>
    <message>
        <source>Light and shadow on the crown</source>
        <translation>Licht und Schatten auf der Krone</translation>
    </message>
    <message>
        <source>Flat</source>
        <translation>Flach</translation>
    </message>
    <message>
        <source>Flat views beside the crown (Ctrl+F)</source>
        <translation>Flache Ansichten neben der Krone (Strg+F)</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Einpassen</translation>
    </message>
    <message>
        <source>Show the whole crown (Home)</source>
        <translation>Ganze Krone zeigen (Pos1)</translation>
    </message>
    <message>
        <source>{degrees}° observer</source>
        <translation>{degrees}°-Beobachter</translation>
    </message>
    <message>
        <source>Check the display...</source>
        <translation>Bildschirm prüfen...</translation>
    </message>
    <message>
        <source>Light {light}</source>
        <translation>Licht {light}</translation>
    </message>
    <message>
        <source>Light {light}, {degrees}°</source>
        <translation>Licht {light}, {degrees}°</translation>
    </message>
    <message>
        <source>Light {light}, {degrees} degrees</source>
        <translation>Licht {light}, {degrees} Grad</translation>
    </message>
    <message>
        <source>The light the crown is seen under: {name}. Figures stay those of D65, 2°.</source>
        <translation>Das Licht, unter dem die Krone gesehen wird: {name}. Zahlen bleiben die von D65, 2°.</translation>
    </message>
</context>
<context>
    <name>look desk</name>
    <message>
        <source>stopped; choose a depth to go on</source>
        <translation>angehalten; wählen Sie eine Tiefe, um fortzufahren</translation>
    </message>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>greys stretched to three times their contrast</source>
        <translation>Grautöne auf dreifachen Kontrast gestreckt</translation>
    </message>
    <message>
        <source>body L* {lightness:.1f}, as predicted</source>
        <translation>Körper L* {lightness:.1f}, wie vorhergesagt</translation>
    </message>
    <message>
        <source>Value, L*</source>
        <translation>Helligkeit, L*</translation>
    </message>
    <message>
        <source>{most:g} or more</source>
        <translation>{most:g} oder mehr</translation>
    </message>
    <message>
        <source>half of observers see 0.8, accept 1.8</source>
        <translation>die Hälfte der Betrachter sieht 0.8, nimmt 1.8 hin</translation>
    </message>
    <message>
        <source>not calibrated: direction, not a match</source>
        <translation>nicht kalibriert: Richtung, keine Übereinstimmung</translation>
    </message>
    <message>
        <source>nothing is wanted there</source>
        <translation>dort ist nichts gewünscht</translation>
    </message>
    <message>
        <source>no wanted colour has been set</source>
        <translation>noch ist keine Farbe gewünscht</translation>
    </message>
    <message>
        <source>wanted colour was measured otherwise</source>
        <translation>gewünschte Farbe wurde anders gemessen</translation>
    </message>
    <message>
        <source>Offset from wanted, {de}</source>
        <translation>Abstand vom Ziel, {de}</translation>
    </message>
    <message>
        <source>orange: below the minimum of {block}</source>
        <translation>orange: unter dem Mindestmaß von {block}</translation>
    </message>
    <message>
        <source>assumed: the crown has no inner surface</source>
        <translation>angenommen: Die Krone hat keine Innenfläche</translation>
    </message>
    <message>
        <source>Wall, mm sintered, after grinding</source>
        <translation>Wand, mm gesintert, nach dem Beschleifen</translation>
    </message>
    <message>
        <source>Wall, mm sintered</source>
        <translation>Wand, mm gesintert</translation>
    </message>
    <message>
        <source>the body&apos;s L* changes by {change}</source>
        <translation>L* des Körpers ändert sich um {change}</translation>
    </message>
    <message>
        <source>worked out; shown as it is until then</source>
        <translation>wird ausgerechnet; bis dahin gezeigt, wie es ist</translation>
    </message>
    <message>
        <source>grinding</source>
        <translation>Beschleifen</translation>
    </message>
    <message>
        <source>Grinding</source>
        <translation>Beschleifen</translation>
    </message>
    <message>
        <source>ground {depth_mm:.1f} mm: {colour}</source>
        <translation>{depth_mm:.1f} mm beschliffen: {colour}</translation>
    </message>
    <message>
        <source>value L* {lightness:.1f}</source>
        <translation>Helligkeit L* {lightness:.1f}</translation>
    </message>
    <message>
        <source>value L* {lightness:.1f}, {step} from the body</source>
        <translation>Helligkeit L* {lightness:.1f}, {step} gegen den Körper</translation>
    </message>
    <message>
        <source>nothing to compare with</source>
        <translation>nichts zum Vergleichen</translation>
    </message>
    <message>
        <source>{off:.1f} {de} from {colour}</source>
        <translation>{off:.1f} {de} von {colour}</translation>
    </message>
    <message>
        <source>{wall:.2f} mm, {over:.2f} above the minimum {least:.2f}</source>
        <translation>{wall:.2f} mm, {over:.2f} über dem Mindestmaß {least:.2f}</translation>
    </message>
    <message>
        <source>{wall:.2f} mm, {over:.2f} below the minimum {least:.2f}</source>
        <translation>{wall:.2f} mm, {over:.2f} unter dem Mindestmaß {least:.2f}</translation>
    </message>
</context>
<context>
    <name>main window</name>
    <message>
        <source>Sample materials are invented: do not fire by them</source>
        <translation>Mustermaterialien sind erfunden: Nicht danach brennen</translation>
    </message>
    <message>
        <source>A planning aid: the makers&apos; instructions for use decide</source>
        <translation>Eine Planungshilfe: Es gilt die Gebrauchsanweisung der Hersteller</translation>
    </message>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Ablauf</translation>
    </message>
    <message>
        <source>revision {revision}</source>
        <translation>Revision {revision}</translation>
    </message>
    <message>
        <source>read-only</source>
        <translation>nur lesen</translation>
    </message>
    <message>
        <source>not saved</source>
        <translation>nicht gespeichert</translation>
    </message>
    <message>
        <source>{count:,} points</source>
        <translation>{count:,} Punkte</translation>
    </message>
    <message>
        <source>plan {hash_}</source>
        <translation>Plan {hash_}</translation>
    </message>
</context>
<context>
    <name>manual bar</name>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Forward</source>
        <translation>Vor</translation>
    </message>
    <message>
        <source>contents</source>
        <translation>Inhalt</translation>
    </message>
    <message>
        <source>keys and mouse</source>
        <translation>Tasten und Maus</translation>
    </message>
    <message>
        <source>search the manual</source>
        <translation>Handbuch durchsuchen</translation>
    </message>
    <message>
        <source>Search the manual</source>
        <translation>Handbuch durchsuchen</translation>
    </message>
    <message>
        <source>Words in all pages (Ctrl+F); Return jumps, Down goes to the list</source>
        <translation>Wörter auf allen Seiten (Strg+F); Eingabe springt, Pfeil ab geht zur Liste</translation>
    </message>
    <message>
        <source>The manual is in English.</source>
        <translation>Das Handbuch ist auf Englisch.</translation>
    </message>
    <message>
        <source>nothing found</source>
        <translation>nichts gefunden</translation>
    </message>
    <message>
        <source>1 line</source>
        <translation>1 Zeile</translation>
    </message>
    <message>
        <source>{count} lines</source>
        <translation>{count} Zeilen</translation>
    </message>
</context>
<context>
    <name>manual text</name>
    <message>
        <source>page of the manual</source>
        <translation>Seite des Handbuchs</translation>
    </message>
    <message>
        <source># The page is missing

The file {name} of the manual cannot be read. Install stainmap again.</source>
        <translation># Die Seite fehlt

Die Datei {name} des Handbuchs kann nicht gelesen werden. Installieren Sie stainmap neu.</translation>
    </message>
</context>
<context>
    <name>manual window</name>
    <message>
        <source>sections of the page</source>
        <translation>Abschnitte der Seite</translation>
    </message>
    <message>
        <source>where it stands</source>
        <translation>wo es steht</translation>
    </message>
    <message>
        <source>Manual</source>
        <translation>Handbuch</translation>
    </message>
</context>
<context>
    <name>materials</name>
    <message>
        <source>Blocks</source>
        <translation>Rohlinge</translation>
    </message>
    <message>
        <source>Liquids</source>
        <translation>Flüssigkeiten</translation>
    </message>
    <message>
        <source>Ions</source>
        <translation>Ionen</translation>
    </message>
    <message>
        <source>Dyes</source>
        <translation>Farbstoffe</translation>
    </message>
    <message>
        <source>Programmes</source>
        <translation>Programme</translation>
    </message>
    <message>
        <source>Stumps</source>
        <translation>Stümpfe</translation>
    </message>
    <message>
        <source>Cements</source>
        <translation>Zemente</translation>
    </message>
</context>
<context>
    <name>materials case</name>
    <message>
        <source>as its block</source>
        <translation>als seinen Rohling</translation>
    </message>
    <message>
        <source>in jar {jar}</source>
        <translation>in Napf {jar}</translation>
    </message>
    <message>
        <source>as its sintering programme</source>
        <translation>als sein Sinterprogramm</translation>
    </message>
    <message>
        <source>The open case uses the {kind} &apos;{name}&apos; {where}.</source>
        <translation>Der offene Fall verwendet „{name}“ ({kind}) {where}.</translation>
    </message>
    <message>
        <source>Choose another there first.</source>
        <translation>Wählen Sie dort zuerst etwas anderes.</translation>
    </message>
    <message>
        <source>in its {kind} &apos;{name}&apos;</source>
        <translation>in „{name}“ ({kind})</translation>
    </message>
    <message>
        <source>not in the case</source>
        <translation>nicht im Fall</translation>
    </message>
    <message>
        <source>the case has other numbers</source>
        <translation>der Fall hat andere Zahlen</translation>
    </message>
    <message>
        <source>used {where}</source>
        <translation>verwendet {where}</translation>
    </message>
    <message>
        <source>in the case</source>
        <translation>im Fall</translation>
    </message>
    <message>
        <source>other</source>
        <translation>anders</translation>
    </message>
    <message>
        <source>used</source>
        <translation>verwendet</translation>
    </message>
    <message>
        <source>same</source>
        <translation>gleich</translation>
    </message>
    <message>
        <source>behind its {region}</source>
        <translation>dahinter ({region})</translation>
    </message>
</context>
<context>
    <name>materials desk</name>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Checking it…</source>
        <translation>Wird geprüft…</translation>
    </message>
    <message>
        <source>Checking the material</source>
        <translation>Material wird geprüft</translation>
    </message>
    <message>
        <source>Rename {kind}</source>
        <translation>Umbenennen: {kind}</translation>
    </message>
    <message>
        <source>New name of {name}:</source>
        <translation>Neuer Name für {name}:</translation>
    </message>
    <message>
        <source>Removed: {names}.</source>
        <translation>Entfernt: {names}.</translation>
    </message>
    <message>
        <source>Solving…</source>
        <translation>Wird gelöst…</translation>
    </message>
    <message>
        <source>Solving a block</source>
        <translation>Rohling wird gelöst</translation>
    </message>
    <message>
        <source>Read a spectrum</source>
        <translation>Spektrum lesen</translation>
    </message>
    <message>
        <source>Reading a spectrum</source>
        <translation>Spektrum wird gelesen</translation>
    </message>
    <message>
        <source>Write a spectrum</source>
        <translation>Spektrum schreiben</translation>
    </message>
    <message>
        <source>Import materials</source>
        <translation>Materialien importieren</translation>
    </message>
    <message>
        <source>Importing materials</source>
        <translation>Materialien werden importiert</translation>
    </message>
    <message>
        <source>Export materials</source>
        <translation>Materialien exportieren</translation>
    </message>
    <message>
        <source>change {kind} {name}</source>
        <translation>{kind} {name} ändern</translation>
    </message>
    <message>
        <source>add {kind} {name}</source>
        <translation>{kind} {name} hinzufügen</translation>
    </message>
    <message>
        <source>remove {kind} {name}</source>
        <translation>{kind} {name} entfernen</translation>
    </message>
    <message>
        <source>put {kind} {name} into the case</source>
        <translation>{kind} {name} in den Fall übernehmen</translation>
    </message>
    <message>
        <source>import materials of {name}</source>
        <translation>Materialien aus {name} importieren</translation>
    </message>
    <message>
        <source>Changes are not kept yet: {names}. Keep them in the laboratory&apos;s set?</source>
        <translation>Noch nicht behaltene Änderungen: {names}. Im Bestand des Labors behalten?</translation>
    </message>
    <message>
        <source>new {kind}</source>
        <translation>neu: {kind}</translation>
    </message>
    <message>
        <source>{name} is a copy of the first {kind}, to be changed.</source>
        <translation>{name} ist eine Kopie des ersten Eintrags dieser Art ({kind}), zum Ändern.</translation>
    </message>
    <message>
        <source>Your own {name} takes the place of the one that came.</source>
        <translation>Ihr eigener Eintrag {name} tritt an die Stelle des mitgelieferten.</translation>
    </message>
    <message>
        <source>{name} is yours to change.</source>
        <translation>{name} gehört Ihnen zum Ändern.</translation>
    </message>
    <message>
        <source>{name} is kept in the laboratory&apos;s set.</source>
        <translation>{name} ist im Bestand des Labors behalten.</translation>
    </message>
    <message>
        <source>{name} is called {new} in the laboratory&apos;s set.</source>
        <translation>{name} heißt im Bestand des Labors jetzt {new}.</translation>
    </message>
    <message>
        <source>The open case keeps {name} besides.</source>
        <translation>Der offene Fall behält daneben {name}.</translation>
    </message>
    <message>
        <source>The open case has {name} as it is kept here; undo takes it back.</source>
        <translation>Der offene Fall hat {name}, wie es hier behalten ist; Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
        <source>The open case has it too, as a step that can be undone.</source>
        <translation>Der offene Fall hat es auch, als Schritt, der sich rückgängig machen lässt.</translation>
    </message>
    <message>
        <source>The open case stays as it is.</source>
        <translation>Der offene Fall bleibt, wie er ist.</translation>
    </message>
    <message>
        <source>Left out: {sentences}</source>
        <translation>Ausgelassen: {sentences}</translation>
    </message>
    <message>
        <source>Written: {path}</source>
        <translation>Geschrieben: {path}</translation>
    </message>
    <message>
        <source>Nothing new was in the file.</source>
        <translation>In der Datei war nichts Neues.</translation>
    </message>
    <message>
        <source>Imported: {names}.</source>
        <translation>Importiert: {names}.</translation>
    </message>
    <message>
        <source>Exported: {names}, to {path}</source>
        <translation>Exportiert: {names}, nach {path}</translation>
    </message>
    <message>
        <source>Only the laboratory&apos;s own entries can be renamed.</source>
        <translation>Nur die eigenen Einträge des Labors können umbenannt werden.</translation>
    </message>
    <message>
        <source>It has changes that are not kept yet.</source>
        <translation>Es hat Änderungen, die noch nicht behalten sind.</translation>
    </message>
    <message>
        <source>Keep or discard them first.</source>
        <translation>Behalten oder verwerfen Sie sie zuerst.</translation>
    </message>
    <message>
        <source>There is an own dye of that name already.</source>
        <translation>Einen eigenen Farbstoff dieses Namens gibt es schon.</translation>
    </message>
    <message>
        <source>Nothing is chosen.</source>
        <translation>Nichts ist gewählt.</translation>
    </message>
    <message>
        <source>Choose entries of the list first.</source>
        <translation>Wählen Sie zuerst Einträge der Liste.</translation>
    </message>
</context>
<context>
    <name>materials editor</name>
    <message>
        <source>Add a layer</source>
        <translation>Schicht hinzufügen</translation>
    </message>
    <message>
        <source>Add an ion</source>
        <translation>Ion hinzufügen</translation>
    </message>
    <message>
        <source>Add a band</source>
        <translation>Bande hinzufügen</translation>
    </message>
    <message>
        <source>Add a piece</source>
        <translation>Stück hinzufügen</translation>
    </message>
    <message>
        <source>Remove the layer</source>
        <translation>Schicht entfernen</translation>
    </message>
    <message>
        <source>Remove the ion</source>
        <translation>Ion entfernen</translation>
    </message>
    <message>
        <source>Remove the band</source>
        <translation>Bande entfernen</translation>
    </message>
    <message>
        <source>Remove the piece</source>
        <translation>Stück entfernen</translation>
    </message>
    <message>
        <source>Where the numbers come from</source>
        <translation>Woher die Zahlen kommen</translation>
    </message>
    <message>
        <source>What the plot shows</source>
        <translation>Was das Diagramm zeigt</translation>
    </message>
    <message>
        <source>Absorption</source>
        <translation>Absorption</translation>
    </message>
    <message>
        <source>Numbers</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Numbers of the material</source>
        <translation>Zahlen des Materials</translation>
    </message>
    <message>
        <source>What the material is made up of</source>
        <translation>Woraus das Material besteht</translation>
    </message>
    <message>
        <source>Add a row</source>
        <translation>Zeile hinzufügen</translation>
    </message>
    <message>
        <source>Remove the row</source>
        <translation>Zeile entfernen</translation>
    </message>
    <message>
        <source>Solve from the colour</source>
        <translation>Aus der Farbe lösen</translation>
    </message>
    <message>
        <source>Read a spectrum...</source>
        <translation>Spektrum lesen...</translation>
    </message>
    <message>
        <source>Write a spectrum...</source>
        <translation>Spektrum schreiben...</translation>
    </message>
    <message>
        <source>also in the open case</source>
        <translation>auch im offenen Fall</translation>
    </message>
    <message>
        <source>The case has materials of its own. With this, what you keep, add or import comes into it too, as a step that can be undone.</source>
        <translation>Der Fall hat eigene Materialien. Hiermit kommt auch in ihn, was Sie behalten, hinzufügen oder importieren, als Schritt, der sich rückgängig machen lässt.</translation>
    </message>
    <message>
        <source>Put into the case</source>
        <translation>In den Fall übernehmen</translation>
    </message>
    <message>
        <source>Discard</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Keep the changes</source>
        <translation>Änderungen behalten</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Expected is {expected}.</source>
        <translation>Erwartet: {expected}.</translation>
    </message>
</context>
<context>
    <name>materials files</name>
    <message>
        <source>Materials (*.toml)</source>
        <translation>Materialien (*.toml)</translation>
    </message>
    <message>
        <source>Spectra (*.csv *.txt)</source>
        <translation>Spektren (*.csv *.txt)</translation>
    </message>
    <message>
        <source>Of which?</source>
        <translation>Wovon?</translation>
    </message>
</context>
<context>
    <name>materials list</name>
    <message>
        <source>The laboratory&apos;s own</source>
        <translation>Die des Labors</translation>
    </message>
    <message>
        <source>Comes with the program: copy it to change it</source>
        <translation>Mit dem Programm geliefert: zum Ändern kopieren</translation>
    </message>
    <message>
        <source>Only in the open case</source>
        <translation>Nur im offenen Fall</translation>
    </message>
    <message>
        <source>the laboratory&apos;s own</source>
        <translation>aus dem Labor</translation>
    </message>
    <message>
        <source>comes with the program</source>
        <translation>mit dem Programm geliefert</translation>
    </message>
    <message>
        <source>only in the open case</source>
        <translation>nur im offenen Fall</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Numbers</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Case</source>
        <translation>Fall</translation>
    </message>
    <message>
        <source>changed, not kept yet</source>
        <translation>geändert, noch nicht behalten</translation>
    </message>
</context>
<context>
    <name>materials plot</name>
    <message>
        <source>Plot</source>
        <translation>Diagramm</translation>
    </message>
    <message>
        <source>Plot: {title}</source>
        <translation>Diagramm: {title}</translation>
    </message>
    <message>
        <source>{title}: colours for {words}.</source>
        <translation>{title}: Farben für {words}.</translation>
    </message>
    <message>
        <source>{name}: from {first:.3g} at {begin:.3g} to {last:.3g} at {end:.3g}, highest {most:.3g} at {place:.3g}.</source>
        <translation>{name}: von {first:.3g} bei {begin:.3g} bis {last:.3g} bei {end:.3g}, am höchsten {most:.3g} bei {place:.3g}.</translation>
    </message>
    <message>
        <source>{title}, {up} over {across}. {said}</source>
        <translation>{title}, {up} über {across}. {said}</translation>
    </message>
</context>
<context>
    <name>materials tables</name>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>Choose</source>
        <translation>Wählen</translation>
    </message>
</context>
<context>
    <name>materials window</name>
    <message>
        <source>The laboratory&apos;s set is kept on this computer, for all cases. A case carries its own copy of materials, so that its plan stays what it was: undo takes back what the case holds, not what the set holds.</source>
        <translation>Der Bestand des Labors liegt auf diesem Rechner, für alle Fälle. Ein Fall trägt seine eigene Kopie der Materialien, damit sein Plan bleibt, was er war: Rückgängig nimmt zurück, was der Fall enthält, nicht den Bestand.</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>Kinds of material</source>
        <translation>Arten von Material</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Rename...</source>
        <translation>Umbenennen...</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Import...</source>
        <translation>Importieren...</translation>
    </message>
    <message>
        <source>Export...</source>
        <translation>Exportieren...</translation>
    </message>
    <message>
        <source>Materials of another file (TOML) come into the set</source>
        <translation>Materialien einer anderen Datei (TOML) kommen in den Bestand</translation>
    </message>
    <message>
        <source>Write the chosen entries as a materials file (TOML)</source>
        <translation>Die gewählten Einträge als Materialdatei (TOML) schreiben</translation>
    </message>
</context>
<context>
    <name>menu</name>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;Crown</source>
        <translation>&amp;Krone</translation>
    </message>
    <message>
        <source>&amp;Plan</source>
        <translation>&amp;Plan</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>P&amp;ractice</source>
        <translation>&amp;Übung</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;Open...</source>
        <translation>Ö&amp;ffnen...</translation>
    </message>
    <message>
        <source>Open &amp;recent</source>
        <translation>Zu&amp;letzt geöffnet</translation>
    </message>
    <message>
        <source>Open the sa&amp;mple</source>
        <translation>&amp;Musterfall öffnen</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>Save &amp;as...</source>
        <translation>Speichern &amp;unter...</translation>
    </message>
    <message>
        <source>&amp;Export...</source>
        <translation>&amp;Exportieren...</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportieren</translation>
    </message>
    <message>
        <source>&amp;Print sheets...</source>
        <translation>Blätter &amp;drucken...</translation>
    </message>
    <message>
        <source>Sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>Save s&amp;heets (A4)...</source>
        <translation>Blätter s&amp;ichern (A4)...</translation>
    </message>
    <message>
        <source>Save sheets (&amp;Letter)...</source>
        <translation>Blätter si&amp;chern (Letter)...</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>Cu&amp;t coats</source>
        <translation>Aufträge &amp;ausschneiden</translation>
    </message>
    <message>
        <source>&amp;Copy coats</source>
        <translation>Aufträge &amp;kopieren</translation>
    </message>
    <message>
        <source>Copy coats with &amp;names</source>
        <translation>Aufträge mit &amp;Namen kopieren</translation>
    </message>
    <message>
        <source>&amp;Paste coats</source>
        <translation>Aufträge &amp;einfügen</translation>
    </message>
    <message>
        <source>Se&amp;ttings...</source>
        <translation>Ein&amp;stellungen...</translation>
    </message>
    <message>
        <source>Say what is &amp;wanted...</source>
        <translation>Gewünschte &amp;Farbe...</translation>
    </message>
    <message>
        <source>&amp;Tooth and roles...</source>
        <translation>&amp;Zahn und Rollen...</translation>
    </message>
    <message>
        <source>Say where &amp;mesial is...</source>
        <translation>Zeigen, wo &amp;mesial ist...</translation>
    </message>
    <message>
        <source>Say which side &amp;bites...</source>
        <translation>Zeigen, welche Seite &amp;kaut...</translation>
    </message>
    <message>
        <source>Wall where there is no &amp;inner surface...</source>
        <translation>Wand, wo keine &amp;Innenfläche ist...</translation>
    </message>
    <message>
        <source>&amp;How it was read...</source>
        <translation>&amp;Wie sie gelesen wurde...</translation>
    </message>
    <message>
        <source>What was &amp;noticed...</source>
        <translation>Was &amp;bemerkt wurde...</translation>
    </message>
    <message>
        <source>&amp;Cut off the crown...</source>
        <translation>Krone ab&amp;schneiden...</translation>
    </message>
    <message>
        <source>&amp;Propose zones again</source>
        <translation>Zonen neu &amp;vorschlagen</translation>
    </message>
    <message>
        <source>How &amp;far zones reach...</source>
        <translation>Wie weit Zonen &amp;reichen...</translation>
    </message>
    <message>
        <source>Brush moves the ma&amp;rgin</source>
        <translation>&amp;Pinsel verschiebt den Kronenrand</translation>
    </message>
    <message>
        <source>&amp;Intake...</source>
        <translation>&amp;Aufnahme...</translation>
    </message>
    <message>
        <source>Suggest coats...</source>
        <translation>Aufträge vorschlagen...</translation>
    </message>
    <message>
        <source>Co&amp;mpare plans...</source>
        <translation>&amp;Pläne vergleichen...</translation>
    </message>
    <message>
        <source>&amp;Film of the plan</source>
        <translation>&amp;Film des Plans</translation>
    </message>
    <message>
        <source>&amp;Hand and uptake...</source>
        <translation>&amp;Hand und Aufnahme der Flüssigkeit...</translation>
    </message>
    <message>
        <source>What &amp;lies behind...</source>
        <translation>Was &amp;dahinter liegt...</translation>
    </message>
    <message>
        <source>H&amp;eight in the block...</source>
        <translation>Höhe im &amp;Rohling...</translation>
    </message>
    <message>
        <source>Show where a &amp;screw leaves...</source>
        <translation>Austritt einer &amp;Schraube zeigen...</translation>
    </message>
    <message>
        <source>&amp;Take the screw channel away</source>
        <translation>Schrauben&amp;kanal wegnehmen</translation>
    </message>
    <message>
        <source>&amp;Mix...</source>
        <translation>&amp;Mischen...</translation>
    </message>
    <message>
        <source>Compare &amp;furnaces...</source>
        <translation>Öfen &amp;vergleichen...</translation>
    </message>
    <message>
        <source>&amp;Blank coupon...</source>
        <translation>&amp;Ungefärbtes Plättchen...</translation>
    </message>
    <message>
        <source>&amp;After sintering...</source>
        <translation>&amp;Nach dem Sintern...</translation>
    </message>
    <message>
        <source>Accent &amp;over connectors</source>
        <translation>Akzent über die V&amp;erbinder</translation>
    </message>
    <message>
        <source>State on the benc&amp;h...</source>
        <translation>S&amp;tand der Arbeit...</translation>
    </message>
    <message>
        <source>T&amp;ray and its sheets...</source>
        <translation>Ta&amp;blett und seine Blätter...</translation>
    </message>
    <message>
        <source>Materials...</source>
        <translation>Materialien...</translation>
    </message>
    <message>
        <source>Look &amp;from</source>
        <translation>Blick &amp;von</translation>
    </message>
    <message>
        <source>&amp;Whole crown</source>
        <translation>&amp;Ganze Krone</translation>
    </message>
    <message>
        <source>&amp;Flat views</source>
        <translation>&amp;Flache Ansichten</translation>
    </message>
    <message>
        <source>Under all &amp;lights...</source>
        <translation>Unter allen &amp;Lichtern...</translation>
    </message>
    <message>
        <source>Check this &amp;point</source>
        <translation>Diese Stelle &amp;prüfen</translation>
    </message>
    <message>
        <source>&amp;Section here...</source>
        <translation>&amp;Schnitt hier...</translation>
    </message>
    <message>
        <source>&amp;Before the last step</source>
        <translation>Vor dem letzten S&amp;chritt</translation>
    </message>
    <message>
        <source>The bare bloc&amp;k</source>
        <translation>Der &amp;bloße Rohling</translation>
    </message>
    <message>
        <source>Correct for c&amp;urvature</source>
        <translation>&amp;Krümmung berücksichtigen</translation>
    </message>
    <message>
        <source>&amp;Next part of the window</source>
        <translation>&amp;Nächster Teil des Fensters</translation>
    </message>
    <message>
        <source>Part of the window &amp;before</source>
        <translation>&amp;Teil des Fensters davor</translation>
    </message>
    <message>
        <source>&amp;Colours of the window</source>
        <translation>Fa&amp;rben des Fensters</translation>
    </message>
    <message>
        <source>&amp;New practice...</source>
        <translation>&amp;Neue Übung...</translation>
    </message>
    <message>
        <source>&amp;Slips of this plan...</source>
        <translation>&amp;Fehlgriffe bei diesem Plan...</translation>
    </message>
    <message>
        <source>&amp;Manual</source>
        <translation>&amp;Handbuch</translation>
    </message>
    <message>
        <source>&amp;Keys and mouse</source>
        <translation>&amp;Tasten und Maus</translation>
    </message>
    <message>
        <source>&amp;Guided first plan</source>
        <translation>&amp;Geführter erster Plan</translation>
    </message>
    <message>
        <source>&amp;Cautions</source>
        <translation>&amp;Warnhinweise</translation>
    </message>
    <message>
        <source>Check the &amp;display...</source>
        <translation>&amp;Bildschirm prüfen...</translation>
    </message>
    <message>
        <source>&amp;Evidence</source>
        <translation>Be&amp;lege</translation>
    </message>
    <message>
        <source>&amp;About stainmap</source>
        <translation>Ü&amp;ber stainmap</translation>
    </message>
    <message>
        <source>&amp;Undo {step}</source>
        <translation>&amp;Rückgängig: {step}</translation>
    </message>
    <message>
        <source>&amp;Redo {step}</source>
        <translation>&amp;Wiederholen: {step}</translation>
    </message>
</context>
<context>
    <name>mixing dialog</name>
    <message>
        <source>Mix</source>
        <translation>Mischen</translation>
    </message>
    <message>
        <source>A jar is {drops} drops of liquid with 2 to 3 of dye (common practice). Mixed jars are kept {hours:g} h at most (assumed); no liquid goes back into its bottle.</source>
        <translation>Ein Napf sind {drops} Tropfen Flüssigkeit mit 2 bis 3 Tropfen Farbstoff (übliche Praxis). Gemischte Näpfe werden höchstens {hours:g} h aufbewahrt (angenommen); keine Flüssigkeit kommt in ihre Flasche zurück.</translation>
    </message>
    <message>
        <source>Drops in 1 mL</source>
        <translation>Tropfen in 1 mL</translation>
    </message>
    <message>
        <source>Film per coat</source>
        <translation>Film je Auftrag</translation>
    </message>
    <message>
        <source>Drops left in the jar</source>
        <translation>Im Napf bleibende Tropfen</translation>
    </message>
    <message>
        <source>assumed until counted or measured</source>
        <translation>angenommen, bis gezählt oder gemessen</translation>
    </message>
    <message>
        <source>Drops in 1 mL (count them)</source>
        <translation>Tropfen in 1 mL (zählen Sie sie)</translation>
    </message>
    <message>
        <source>Film per coat, µm, on the milled surface</source>
        <translation>Film je Auftrag, µm, auf der gefrästen Fläche</translation>
    </message>
    <message>
        <source>Drops that stay in jar and brush</source>
        <translation>Tropfen, die in Napf und Pinsel bleiben</translation>
    </message>
    <message>
        <source>Take the drop of the settings ({drops:.1f} in 1 mL)</source>
        <translation>Tropfen der Einstellungen nehmen ({drops:.1f} in 1 mL)</translation>
    </message>
    <message>
        <source>Dyes that tell jars apart</source>
        <translation>Farbstoffe, die Näpfe unterscheiden</translation>
    </message>
    <message>
        <source>Smallest jars</source>
        <translation>Kleinste Näpfe</translation>
    </message>
    <message>
        <source>Jars of {drops} drops</source>
        <translation>Näpfe mit {drops} Tropfen</translation>
    </message>
    <message>
        <source>The fewest whole drops of the same ratios that last</source>
        <translation>Die wenigsten ganzen Tropfen im selben Verhältnis, die reichen</translation>
    </message>
    <message>
        <source>On chalk the jars differ by dE00 {least:.0f} or more, to colour-blind eyes by {blind:.0f}.</source>
        <translation>Auf Kreide unterscheiden sich die Näpfe um dE00 {least:.0f} oder mehr, für farbenblinde Augen um {blind:.0f}.</translation>
    </message>
    <message>
        <source>No jar is on the tray yet.</source>
        <translation>Noch steht kein Napf auf dem Tablett.</translation>
    </message>
</context>
<context>
    <name>open card</name>
    <message>
        <source>millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>micrometres</source>
        <translation>Mikrometer</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>&apos;{word}&apos; is not a tooth number.</source>
        <translation>„{word}“ ist keine Zahnnummer.</translation>
    </message>
    <message>
        <source>Give two digits, as in 46.</source>
        <translation>Geben Sie zwei Ziffern an, etwa 46.</translation>
    </message>
    <message>
        <source>A tooth is named twice.</source>
        <translation>Ein Zahn ist zweimal genannt.</translation>
    </message>
    <message>
        <source>Questions about the mesh</source>
        <translation>Fragen zum Netz</translation>
    </message>
    <message>
        <source>milled</source>
        <translation>gefräst</translation>
    </message>
    <message>
        <source>sintered</source>
        <translation>gesintert</translation>
    </message>
    <message>
        <source>Read the crown</source>
        <translation>Krone lesen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>46, or 14 15 16 for a bridge</source>
        <translation>46, oder 14 15 16 für eine Brücke</translation>
    </message>
    <message>
        <source>Tooth numbers, ISO 3950</source>
        <translation>Zahnnummern nach ISO 3950</translation>
    </message>
    <message>
        <source>Unit of the file</source>
        <translation>Einheit der Datei</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>Tooth</source>
        <translation>Zahn</translation>
    </message>
    <message>
        <source>File in</source>
        <translation>Datei in</translation>
    </message>
    <message>
        <source>Size is</source>
        <translation>Größe ist</translation>
    </message>
    <message>
        <source>and {count} more notes</source>
        <translation>und {count} weitere Bemerkungen</translation>
    </message>
    <message>
        <source>{unit}, no crown&apos;s size</source>
        <translation>{unit}, keine Kronengröße</translation>
    </message>
    <message>
        <source>Which tooth is it?</source>
        <translation>Welcher Zahn ist es?</translation>
    </message>
    <message>
        <source>Is the mesh as milled, about a quarter oversize, or as sintered?</source>
        <translation>Ist das Netz wie gefräst, etwa ein Viertel größer, oder wie gesintert?</translation>
    </message>
</context>
<context>
    <name>opening flow</name>
    <message>
        <source>Open a mesh or a case</source>
        <translation>Netz oder Fall öffnen</translation>
    </message>
    <message>
        <source>Meshes and cases ({endings});;All files (*)</source>
        <translation>Netze und Fälle ({endings});;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Several files were dropped. Drop one, or put cases onto a tray with Ctrl+T.</source>
        <translation>Mehrere Dateien wurden abgelegt. Legen Sie eine ab, oder legen Sie Fälle mit Strg+T auf ein Tablett.</translation>
    </message>
    <message>
        <source>One file at a time</source>
        <translation>Eine Datei auf einmal</translation>
    </message>
    <message>
        <source>What was dropped does not lie on this computer. Copy it here, then drop it.</source>
        <translation>Was abgelegt wurde, liegt nicht auf diesem Rechner. Kopieren Sie es hierher, dann legen Sie es ab.</translation>
    </message>
    <message>
        <source>Not a file of this computer</source>
        <translation>Keine Datei dieses Rechners</translation>
    </message>
    <message>
        <source>Noticed when the crown was read</source>
        <translation>Beim Lesen der Krone bemerkt</translation>
    </message>
    <message>
        <source>Read-only</source>
        <translation>Nur lesen</translation>
    </message>
    <message>
        <source>{why} What you change here can only be saved under another name.</source>
        <translation>{why} Was Sie hier ändern, kann nur unter einem anderen Namen gespeichert werden.</translation>
    </message>
    <message>
        <source>Which way does it bite?</source>
        <translation>Welche Seite kaut?</translation>
    </message>
    <message>
        <source>The shape hardly tells. It is shown as it was guessed.</source>
        <translation>Die Form sagt es kaum. Gezeigt ist die Vermutung.</translation>
    </message>
    <message>
        <source>Where is mesial?</source>
        <translation>Wo ist mesial?</translation>
    </message>
    <message>
        <source>The shape does not tell, and zones on the sides go by it.</source>
        <translation>Die Form sagt es nicht, und seitliche Zonen richten sich danach.</translation>
    </message>
    <message>
        <source>No crown yet</source>
        <translation>Noch keine Krone</translation>
    </message>
    <message>
        <source>Drop a file here ({formats} or a case), or open one with Ctrl+O.</source>
        <translation>Legen Sie hier eine Datei ab ({formats} oder einen Fall), oder öffnen Sie eine mit Strg+O.</translation>
    </message>
    <message>
        <source>This did not work</source>
        <translation>Das ging nicht</translation>
    </message>
    <message>
        <source>Are these the teeth?</source>
        <translation>Sind das die Zähne?</translation>
    </message>
    <message>
        <source>If they are, the shape can be read by them.</source>
        <translation>Wenn ja, kann die Form danach gelesen werden.</translation>
    </message>
    <message>
        <source>the biting side is right</source>
        <translation>die Kauseite stimmt</translation>
    </message>
</context>
<context>
    <name>opening questions</name>
    <message>
        <source>open a mesh</source>
        <translation>Netz öffnen</translation>
    </message>
    <message>
        <source>cancel</source>
        <translation>abbrechen</translation>
    </message>
    <message>
        <source>open another</source>
        <translation>andere öffnen</translation>
    </message>
    <message>
        <source>this is the biting side</source>
        <translation>das ist die Kauseite</translation>
    </message>
    <message>
        <source>close</source>
        <translation>schließen</translation>
    </message>
    <message>
        <source>details</source>
        <translation>Einzelheiten</translation>
    </message>
    <message>
        <source>show where</source>
        <translation>zeigen, wo</translation>
    </message>
    <message>
        <source>show its biting side</source>
        <translation>Kauseite zeigen</translation>
    </message>
    <message>
        <source>it is right</source>
        <translation>es stimmt</translation>
    </message>
    <message>
        <source>show where they part</source>
        <translation>zeigen, wo sie sich trennen</translation>
    </message>
    <message>
        <source>keep to the teeth named</source>
        <translation>bei den genannten Zähnen bleiben</translation>
    </message>
    <message>
        <source>cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>This is not a crown</source>
        <translation>Das ist keine Krone</translation>
    </message>
    <message>
        <source>This is a tooth with its root</source>
        <translation>Das ist ein Zahn mit Wurzel</translation>
    </message>
    <message>
        <source>This is a jaw, not a crown</source>
        <translation>Das ist ein Kiefer, keine Krone</translation>
    </message>
    <message>
        <source>These are several bodies</source>
        <translation>Das sind mehrere Körper</translation>
    </message>
    <message>
        <source>Where is mesial?</source>
        <translation>Wo ist mesial?</translation>
    </message>
    <message>
        <source>Click the side of the crown that faces the midline. The right button turns it.</source>
        <translation>Klicken Sie auf die Seite der Krone, die zur Mittellinie zeigt. Die rechte Taste dreht sie.</translation>
    </message>
    <message>
        <source>Where is its outer side?</source>
        <translation>Wo ist ihre Außenseite?</translation>
    </message>
    <message>
        <source>Click the side that faces cheek or lips. The right button turns the crown.</source>
        <translation>Klicken Sie auf die Seite, die zu Wange oder Lippe zeigt. Die rechte Taste dreht die Krone.</translation>
    </message>
    <message>
        <source>Where does the screw leave?</source>
        <translation>Wo tritt die Schraube aus?</translation>
    </message>
    <message>
        <source>Click the middle of the channel&apos;s mouth. It runs along the axis of the bite.</source>
        <translation>Klicken Sie auf die Mitte der Kanalmündung. Der Kanal verläuft entlang der Kauachse.</translation>
    </message>
    <message>
        <source>Which way does it bite?</source>
        <translation>Welche Seite kaut?</translation>
    </message>
    <message>
        <source>Turn the crown until you look straight onto its biting side.</source>
        <translation>Drehen Sie die Krone, bis Sie gerade auf ihre Kauseite blicken.</translation>
    </message>
</context>
<context>
    <name>order desk</name>
    <message>
        <source>Step {step}, {liquid}, is step {to} now</source>
        <translation>Schritt {step}, {liquid}, ist jetzt Schritt {to}</translation>
    </message>
    <message>
        <source>move a step</source>
        <translation>einen Schritt verschieben</translation>
    </message>
    <message>
        <source>Another order</source>
        <translation>Andere Reihenfolge</translation>
    </message>
    <message>
        <source>another order</source>
        <translation>andere Reihenfolge</translation>
    </message>
    <message>
        <source>{moved}: no colour changes (dE00 0.0).</source>
        <translation>{moved}: Keine Farbe ändert sich (dE00 0.0).</translation>
    </message>
    <message>
        <source>{moved}: {label} changes by dE00 {de00:.1f}, nothing else does.</source>
        <translation>{moved}: {label} ändert sich um dE00 {de00:.1f}, sonst nichts.</translation>
    </message>
    <message>
        <source>{moved}: {first} changes by dE00 {most:.1f}, {second} by {less:.1f}, others by no more.</source>
        <translation>{moved}: {first} ändert sich um dE00 {most:.1f}, {second} um {less:.1f}, andere um nicht mehr.</translation>
    </message>
</context>
<context>
    <name>order tag</name>
    <message>
        <source>step {step} as step {to}</source>
        <translation>Schritt {step} als Schritt {to}</translation>
    </message>
    <message>
        <source>step {step} stays</source>
        <translation>Schritt {step} bleibt</translation>
    </message>
</context>
<context>
    <name>outcome panel</name>
    <message>
        <source>not reachable: bare block {axis} {bare:.1f}</source>
        <translation>nicht erreichbar: bloßer Rohling {axis} {bare:.1f}</translation>
    </message>
    <message>
        <source>wanted and predicted; L*, C*, h, dE00</source>
        <translation>Ziel und Vorhersage; L*, C*, h, dE00</translation>
    </message>
    <message>
        <source>wanted | predicted</source>
        <translation>Ziel | Vorhersage</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>Vorhersage</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>say what is wanted</source>
        <translation>Ziel angeben</translation>
    </message>
    <message>
        <source>Not reachable in {areas}: stain only lowers value and adds chroma.</source>
        <translation>Nicht erreichbar bei {areas}: Färbung senkt nur die Helligkeit und erhöht das Chroma.</translation>
    </message>
    <message>
        <source>change what is wanted</source>
        <translation>Ziel ändern</translation>
    </message>
    <message>
        <source>fewest coats</source>
        <translation>wenigste Aufträge</translation>
    </message>
    <message>
        <source>from body</source>
        <translation>zum Körper</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>inside the uncertainty</source>
        <translation>innerhalb der Unsicherheit</translation>
    </message>
    <message>
        <source>{figures} (one standard deviation).</source>
        <translation>{figures} (eine Standardabweichung).</translation>
    </message>
    <message>
        <source>Wanted colour: {conversion}.</source>
        <translation>Gewünschte Farbe: {conversion}.</translation>
    </message>
    <message>
        <source>Click to turn the crown to this area.</source>
        <translation>Klick dreht die Krone zu dieser Fläche.</translation>
    </message>
</context>
<context>
    <name>photograph dialog</name>
    <message>
        <source>grey patch</source>
        <translation>Graufeld</translation>
    </message>
    <message>
        <source>Open a picture that shows the tooth beside a neutral grey patch, in the same light.</source>
        <translation>Öffnen Sie ein Bild, das den Zahn neben einem neutralen Graufeld zeigt, im selben Licht.</translation>
    </message>
    <message>
        <source>Arrow keys move the chosen spot, plus and minus or the wheel change its size. Keep off gloss, edges and shadows.</source>
        <translation>Pfeiltasten bewegen den gewählten Fleck, Plus und Minus oder das Rad ändern seine Größe. Meiden Sie Glanz, Kanten und Schatten.</translation>
    </message>
    <message>
        <source>Shade from a photograph</source>
        <translation>Farbe aus einem Foto</translation>
    </message>
    <message>
        <source>Open a &amp;picture...</source>
        <translation>&amp;Bild öffnen...</translation>
    </message>
    <message>
        <source>Reflectance of the grey patch in percent</source>
        <translation>Reflexion des Graufelds in Prozent</translation>
    </message>
    <message>
        <source>The patch reflects</source>
        <translation>Das Feld reflektiert</translation>
    </message>
    <message>
        <source>The next click in the picture places the {name}</source>
        <translation>Der nächste Klick ins Bild setzt: {name}</translation>
    </message>
    <message>
        <source>Open a picture</source>
        <translation>Bild öffnen</translation>
    </message>
    <message>
        <source>Pictures ({wanted})</source>
        <translation>Bilder ({wanted})</translation>
    </message>
    <message>
        <source>light of {light_k:.0f} K</source>
        <translation>Licht von {light_k:.0f} K</translation>
    </message>
    <message>
        <source>not usable</source>
        <translation>nicht brauchbar</translation>
    </message>
    <message>
        <source>Now click the tooth, away from gloss and edges.</source>
        <translation>Klicken Sie jetzt auf den Zahn, abseits von Glanz und Kanten.</translation>
    </message>
    <message>
        <source>L* a* b* after balancing, with one standard deviation. A photograph is the least certain of the three ways.</source>
        <translation>L* a* b* nach dem Abgleich, mit einer Standardabweichung. Ein Foto ist der unsicherste der drei Wege.</translation>
    </message>
</context>
<context>
    <name>picture canvas</name>
    <message>
        <source>Crown picture</source>
        <translation>Bild der Krone</translation>
    </message>
</context>
<context>
    <name>picture spots</name>
    <message>
        <source>Photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Click to place the chosen spot. Arrow keys move it, plus and minus change its size.</source>
        <translation>Klick setzt den gewählten Fleck. Pfeiltasten bewegen ihn, Plus und Minus ändern seine Größe.</translation>
    </message>
</context>
<context>
    <name>plan desk</name>
    <message>
        <source>No coats in this plan yet: how long the day takes is told once there are.</source>
        <translation>Noch keine Aufträge in diesem Plan: Wie lange der Tag dauert, steht hier, sobald es welche gibt.</translation>
    </message>
    <message>
        <source>remove a step</source>
        <translation>einen Schritt entfernen</translation>
    </message>
    <message>
        <source>take a step from another jar</source>
        <translation>einen Schritt aus einem anderen Napf nehmen</translation>
    </message>
    <message>
        <source>choose the block</source>
        <translation>den Rohling wählen</translation>
    </message>
    <message>
        <source>choose the programme</source>
        <translation>das Programm wählen</translation>
    </message>
    <message>
        <source>set the size of the mesh</source>
        <translation>die Größe des Netzes setzen</translation>
    </message>
    <message>
        <source>Jar {number}: {warning}</source>
        <translation>Napf {number}: {warning}</translation>
    </message>
    <message>
        <source>light figures are inherited from the zone below</source>
        <translation>helle Zahlen sind von der Zone darunter geerbt</translation>
    </message>
    <message>
        <source>being predicted</source>
        <translation>wird vorhergesagt</translation>
    </message>
    <message>
        <source>Not calibrated: direction, not a match.</source>
        <translation>Nicht kalibriert: Richtung, keine Übereinstimmung.</translation>
    </message>
    <message>
        <source>clear {area}, step {step}</source>
        <translation>{area} leeren, Schritt {step}</translation>
    </message>
    <message>
        <source>{span} on {area}, step {step}</source>
        <translation>{span} auf {area}, Schritt {step}</translation>
    </message>
    <message>
        <source>lock the coats of step {step}</source>
        <translation>die Aufträge von Schritt {step} sperren</translation>
    </message>
    <message>
        <source>set free the coats of step {step}</source>
        <translation>die Aufträge von Schritt {step} freigeben</translation>
    </message>
    <message>
        <source>lock the coats of {count} cells</source>
        <translation>die Aufträge von {count} Zellen sperren</translation>
    </message>
    <message>
        <source>set free the coats of {count} cells</source>
        <translation>die Aufträge von {count} Zellen freigeben</translation>
    </message>
    <message>
        <source>add a step</source>
        <translation>einen Schritt hinzufügen</translation>
    </message>
    <message>
        <source>add a step of {liquid}</source>
        <translation>einen Schritt mit {liquid} hinzufügen</translation>
    </message>
    <message>
        <source>jar {number}</source>
        <translation>Napf {number}</translation>
    </message>
    <message>
        <source>new jar</source>
        <translation>neuer Napf</translation>
    </message>
    <message>
        <source>choose what lies behind</source>
        <translation>wählen, was dahinter liegt</translation>
    </message>
</context>
<context>
    <name>plan dialogs</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>change what is done after sintering</source>
        <translation>ändern, was nach dem Sintern geschieht</translation>
    </message>
    <message>
        <source>change hand and uptake</source>
        <translation>Hand und Aufnahme ändern</translation>
    </message>
    <message>
        <source>change what lies behind</source>
        <translation>ändern, was dahinter liegt</translation>
    </message>
    <message>
        <source>{kind} from {bottom:g} mm</source>
        <translation>{kind} ab {bottom:g} mm</translation>
    </message>
    <message>
        <source>Height in the block</source>
        <translation>Höhe im Rohling</translation>
    </message>
    <message>
        <source>Layers of {name}: {layers}.
Lowest point of the crown above the bottom of the blank, mm milled:</source>
        <translation>Schichten von {name}: {layers}.
Tiefster Punkt der Krone über dem Boden des Rohlings, mm gefräst:</translation>
    </message>
    <message>
        <source>{height:g} mm above the bottom of the blank</source>
        <translation>{height:g} mm über dem Boden des Rohlings</translation>
    </message>
    <message>
        <source>coupon of {programme}</source>
        <translation>Plättchen zu {programme}</translation>
    </message>
    <message>
        <source>take the screw channel away</source>
        <translation>den Schraubenkanal wegnehmen</translation>
    </message>
    <message>
        <source>Comparing furnaces</source>
        <translation>Öfen werden verglichen</translation>
    </message>
    <message>
        <source>Point at a place of the crown first.</source>
        <translation>Zeigen Sie zuerst auf eine Stelle der Krone.</translation>
    </message>
    <message>
        <source>Checked: {place}</source>
        <translation>Geprüft: {place}</translation>
    </message>
</context>
<context>
    <name>plate</name>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>cancel</source>
        <translation>abbrechen</translation>
    </message>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>{title}: {phrase}, {share:.0f} percent</source>
        <translation>{title}: {phrase}, {share:.0f} Prozent</translation>
    </message>
    <message>
        <source>{phrase}, about {count:.0f} s left</source>
        <translation>{phrase}, noch etwa {count:.0f} s</translation>
    </message>
    <message>
        <source>{phrase}, about {count:.0f} min left</source>
        <translation>{phrase}, noch etwa {count:.0f} min</translation>
    </message>
</context>
<context>
    <name>practice bar</name>
    <message>
        <source>not said yet</source>
        <translation>noch nicht angegeben</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>A sitting is {minutes} minutes; nothing happens when they are over</source>
        <translation>Eine Sitzung dauert {minutes} Minuten; danach geschieht nichts</translation>
    </message>
    <message>
        <source>less</source>
        <translation>weniger</translation>
    </message>
    <message>
        <source>Show less of the task</source>
        <translation>Weniger von der Aufgabe zeigen</translation>
    </message>
    <message>
        <source>Show the coat map</source>
        <translation>Auftragsplan zeigen</translation>
    </message>
    <message>
        <source>Hand in</source>
        <translation>Abgeben</translation>
    </message>
    <message>
        <source>Score what is there (Ctrl+Return)</source>
        <translation>Bewerten, was da ist (Strg+Eingabe)</translation>
    </message>
    <message>
        <source>leave practice</source>
        <translation>Übung verlassen</translation>
    </message>
    <message>
        <source>What is to be seen?</source>
        <translation>Was ist zu sehen?</translation>
    </message>
    <message>
        <source>What you see</source>
        <translation>Was Sie sehen</translation>
    </message>
    <message>
        <source>What was done wrong?</source>
        <translation>Was wurde falsch gemacht?</translation>
    </message>
    <message>
        <source>What was done wrong</source>
        <translation>Was falsch gemacht wurde</translation>
    </message>
    <message>
        <source>Show as planned (V)</source>
        <translation>Wie geplant zeigen (V)</translation>
    </message>
    <message>
        <source>Point at the crown to read both colours of a place.</source>
        <translation>Zeigen Sie auf die Krone, um beide Farben einer Stelle abzulesen.</translation>
    </message>
    <message>
        <source>Show as it came out (V)</source>
        <translation>Wie geworden zeigen (V)</translation>
    </message>
    <message>
        <source>what to do</source>
        <translation>was zu tun ist</translation>
    </message>
    <message>
        <source>Show what to do</source>
        <translation>Zeigen, was zu tun ist</translation>
    </message>
</context>
<context>
    <name>practice desk</name>
    <message>
        <source>Not kept for later: {trouble}</source>
        <translation>Nicht aufbewahrt: {trouble}</translation>
    </message>
    <message>
        <source>Instructor&apos;s sheet</source>
        <translation>Blatt für Ausbildende</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
</context>
<context>
    <name>practice eye</name>
    <message>
        <source>Two halves of a disc</source>
        <translation>Zwei Hälften einer Scheibe</translation>
    </message>
    <message>
        <source>left is lighter</source>
        <translation>links ist heller</translation>
    </message>
    <message>
        <source>right is lighter</source>
        <translation>rechts ist heller</translation>
    </message>
    <message>
        <source>take back</source>
        <translation>zurücknehmen</translation>
    </message>
    <message>
        <source>Take the last answer back (Backspace)</source>
        <translation>Die letzte Antwort zurücknehmen (Rücktaste)</translation>
    </message>
    <message>
        <source>enough</source>
        <translation>genug</translation>
    </message>
    <message>
        <source>End the test with what is known of the threshold by now</source>
        <translation>Den Test mit dem beenden, was bisher über die Schwelle bekannt ist</translation>
    </message>
    <message>
        <source>How far the test is</source>
        <translation>Wie weit der Test ist</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Which half is lighter?</source>
        <translation>Welche Hälfte ist heller?</translation>
    </message>
    <message>
        <source>pair {count}</source>
        <translation>Paar {count}</translation>
    </message>
    <message>
        <source>Screen, light and tiredness matter: compare only with yourself, on the same screen.</source>
        <translation>Bildschirm, Licht und Müdigkeit spielen mit: Vergleichen Sie nur mit sich selbst, am selben Bildschirm.</translation>
    </message>
    <message>
        <source>You can just tell {threshold:.1f} L* (between {low:.1f} and {high:.1f} with 95 % probability): right in five of six cases.</source>
        <translation>Sie erkennen gerade noch {threshold:.1f} L* (zwischen {low:.1f} und {high:.1f} mit 95 % Wahrscheinlichkeit): richtig in fünf von sechs Fällen.</translation>
    </message>
    <message>
        <source>{count} pairs</source>
        <translation>{count} Paare</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>No difference was told reliably: try again in a calmer light.</source>
        <translation>Kein Unterschied wurde sicher erkannt: Versuchen Sie es in ruhigerem Licht noch einmal.</translation>
    </message>
    <message>
        <source>You tell the smallest step this screen can show: your threshold is below {threshold:.1f} L*.</source>
        <translation>Sie erkennen den kleinsten Schritt, den dieser Bildschirm zeigen kann: Ihre Schwelle liegt unter {threshold:.1f} L*.</translation>
    </message>
</context>
<context>
    <name>practice list</name>
    <message>
        <source>by how it went</source>
        <translation>nach dem Verlauf</translation>
    </message>
    <message>
        <source>easy</source>
        <translation>leicht</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>mittel</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>schwer</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>Exercises</source>
        <translation>Übungen</translation>
    </message>
    <message>
        <source>Your initials or a code</source>
        <translation>Ihre Initialen oder ein Kürzel</translation>
    </message>
    <message>
        <source>as AB</source>
        <translation>etwa AB</translation>
    </message>
    <message>
        <source>Initials or a code</source>
        <translation>Initialen oder ein Kürzel</translation>
    </message>
    <message>
        <source>Asked once; results are kept under it on this computer. {minutes} minutes a day are enough.</source>
        <translation>Einmal gefragt; Ergebnisse liegen darunter auf diesem Rechner. {minutes} Minuten am Tag genügen.</translation>
    </message>
    <message>
        <source>How hard</source>
        <translation>Wie schwer</translation>
    </message>
    <message>
        <source>All exercises</source>
        <translation>Alle Übungen</translation>
    </message>
    <message>
        <source>how hard</source>
        <translation>wie schwer</translation>
    </message>
    <message>
        <source>open a pack</source>
        <translation>Paket öffnen</translation>
    </message>
    <message>
        <source>save these as a pack</source>
        <translation>als Paket sichern</translation>
    </message>
    <message>
        <source>instructor&apos;s sheet</source>
        <translation>Blatt für Ausbildende</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Say first whose repeats they are: type initials or a code.</source>
        <translation>Sagen Sie zuerst, wessen Wiederholungen es sind: Initialen oder ein Kürzel eingeben.</translation>
    </message>
    <message>
        <source>Not kept</source>
        <translation>Nicht aufbewahrt</translation>
    </message>
    <message>
        <source>Next: {why}</source>
        <translation>Als Nächstes: {why}</translation>
    </message>
    <message>
        <source>Say who you are, then begin here.</source>
        <translation>Sagen Sie, wer Sie sind, dann beginnen Sie hier.</translation>
    </message>
    <message>
        <source>{ask} About {minutes} minutes.</source>
        <translation>{ask} Etwa {minutes} Minuten.</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Beginnen</translation>
    </message>
    <message>
        <source>Begin: {title}</source>
        <translation>Beginnen: {title}</translation>
    </message>
    <message>
        <source>Open a pack of exercises</source>
        <translation>Übungspaket öffnen</translation>
    </message>
    <message>
        <source>Packs of exercises (*{suffix})</source>
        <translation>Übungspakete (*{suffix})</translation>
    </message>
    <message>
        <source>Save as a pack</source>
        <translation>Als Paket speichern</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Nicht gespeichert</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
    <message>
        <source>not tried yet</source>
        <translation>noch nicht versucht</translation>
    </message>
    <message>
        <source>once, best {best:.0f}</source>
        <translation>einmal, bestes {best:.0f}</translation>
    </message>
    <message>
        <source>{count} times, best {best:.0f}</source>
        <translation>{count}-mal, bestes {best:.0f}</translation>
    </message>
</context>
<context>
    <name>practice map</name>
    <message>
        <source>predicting the plan</source>
        <translation>Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>Coat map of the exercise</source>
        <translation>Auftragsplan der Übung</translation>
    </message>
    <message>
        <source>Page {number} of the coat map</source>
        <translation>Seite {number} des Auftragsplans</translation>
    </message>
</context>
<context>
    <name>practice repeats</name>
    <message>
        <source>These days are common practice. That spacing helps is published for words and facts, not for exercises like these.</source>
        <translation>Diese Tage sind übliche Praxis. Dass Abstände helfen, ist für Wörter und Fakten veröffentlicht, nicht für Übungen wie diese.</translation>
    </message>
    <message>
        <source>Repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>What {trainee} has passed comes back after some days, and again after longer.</source>
        <translation>Was {trainee} bestanden hat, kommt nach einigen Tagen wieder und dann nach längerer Zeit.</translation>
    </message>
    <message>
        <source>Days from one try to the next</source>
        <translation>Tage von einem Versuch zum nächsten</translation>
    </message>
    <message>
        <source>days from one try to the next</source>
        <translation>Tage von einem Versuch zum nächsten</translation>
    </message>
    <message>
        <source>as usual: {days}</source>
        <translation>wie üblich: {days}</translation>
    </message>
</context>
<context>
    <name>practice result</name>
    <message>
        <source>This says how the exercise went, nothing about clinical skill.</source>
        <translation>Das sagt, wie die Übung lief, nichts über klinisches Können.</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>{points:.0f} of 100 points</source>
        <translation>{points:.0f} von 100 Punkten</translation>
    </message>
    <message>
        <source>of 100 points</source>
        <translation>von 100 Punkten</translation>
    </message>
    <message>
        <source>Best</source>
        <translation>Am besten</translation>
    </message>
    <message>
        <source>What cost most</source>
        <translation>Was am meisten gekostet hat</translation>
    </message>
    <message>
        <source>What helps</source>
        <translation>Was hilft</translation>
    </message>
    <message>
        <source>On the crown</source>
        <translation>Auf der Krone</translation>
    </message>
    <message>
        <source>Point by point</source>
        <translation>Punkt für Punkt</translation>
    </message>
    <message>
        <source>as it came out</source>
        <translation>wie es geworden ist</translation>
    </message>
    <message>
        <source>what you handed in</source>
        <translation>was Sie abgegeben haben</translation>
    </message>
    <message>
        <source>where it is off</source>
        <translation>wo es abweicht</translation>
    </message>
    <message>
        <source>as it was planned</source>
        <translation>wie es geplant war</translation>
    </message>
    <message>
        <source>a true answer</source>
        <translation>eine richtige Lösung</translation>
    </message>
    <message>
        <source>step back</source>
        <translation>Schritt zurück</translation>
    </message>
    <message>
        <source>step on</source>
        <translation>Schritt weiter</translation>
    </message>
    <message>
        <source>The bare crown, nothing painted yet.</source>
        <translation>Die bloße Krone, noch nichts aufgetragen.</translation>
    </message>
    <message>
        <source>Step {step} of {steps} is done: {work}</source>
        <translation>Schritt {step} von {steps} ist getan: {work}</translation>
    </message>
    <message>
        <source>Try it again</source>
        <translation>Noch einmal</translation>
    </message>
    <message>
        <source>Next exercise</source>
        <translation>Nächste Übung</translation>
    </message>
    <message>
        <source>what slips would do to the true plan</source>
        <translation>was Fehlgriffe mit dem richtigen Plan machen würden</translation>
    </message>
    <message>
        <source>{points:.0f} of {most:.0f}</source>
        <translation>{points:.0f} von {most:.0f}</translation>
    </message>
    <message>
        <source>none off</source>
        <translation>kein Abzug</translation>
    </message>
</context>
<context>
    <name>practice slips</name>
    <message>
        <source>slip</source>
        <translation>Fehlgriff</translation>
    </message>
    <message>
        <source>seen most on</source>
        <translation>am deutlichsten auf</translation>
    </message>
    <message>
        <source>at the worst place</source>
        <translation>an der schlimmsten Stelle</translation>
    </message>
    <message>
        <source>Slips</source>
        <translation>Fehlgriffe</translation>
    </message>
    <message>
        <source>What one slip of the hand would do to this plan, as predicted on the whole crown: the area that changes most, and the largest difference at any place.</source>
        <translation>Was ein Fehlgriff der Hand mit diesem Plan machen würde, an der ganzen Krone vorhergesagt: die Fläche, die sich am meisten ändert, und der größte Unterschied an irgendeiner Stelle.</translation>
    </message>
    <message>
        <source>Slips, the gravest first</source>
        <translation>Fehlgriffe, die schwersten zuerst</translation>
    </message>
    <message>
        <source>Your own slips</source>
        <translation>Ihre eigenen Fehlgriffe</translation>
    </message>
    <message>
        <source>How the plan bears your slips</source>
        <translation>Wie der Plan Ihre Fehlgriffe verträgt</translation>
    </message>
    <message>
        <source>Figures of the hand are assumed until you change them. Brushing over a border is in the table, not in the days.</source>
        <translation>Zahlen zur Hand sind angenommen, bis Sie sie ändern. Über eine Grenze pinseln steht in der Tabelle, nicht in den Tagen.</translation>
    </message>
    <message>
        <source>Predicting slips</source>
        <translation>Fehlgriffe werden vorhergesagt</translation>
    </message>
    <message>
        <source>Crowns of ten with a miscounted coat</source>
        <translation>Kronen von zehn mit verzähltem Auftrag</translation>
    </message>
    <message>
        <source>Crowns of ten with a jar mixed wrong</source>
        <translation>Kronen von zehn mit falsch gemischtem Napf</translation>
    </message>
    <message>
        <source>How much a coat differs, percent</source>
        <translation>Wie sehr ein Auftrag schwankt, Prozent</translation>
    </message>
    <message>
        <source>Of ten crowns, a coat miscounted on</source>
        <translation>Von zehn Kronen: Auftrag verzählt bei</translation>
    </message>
    <message>
        <source>a jar mixed wrong on</source>
        <translation>Napf falsch gemischt bei</translation>
    </message>
    <message>
        <source>coats differ by, %</source>
        <translation>Aufträge schwanken um, %</translation>
    </message>
    <message>
        <source>{phrase}, {share:.0f} % done.</source>
        <translation>{phrase}, {share:.0f} % erledigt.</translation>
    </message>
    <message>
        <source>predicting the plan</source>
        <translation>Plan wird vorhergesagt</translation>
    </message>
    <message>
        <source>predicting slips</source>
        <translation>Fehlgriffe werden vorhergesagt</translation>
    </message>
    <message>
        <source>Nothing is painted yet, so nothing can slip.</source>
        <translation>Noch ist nichts aufgetragen, also kann nichts danebengehen.</translation>
    </message>
    <message>
        <source>Counting days</source>
        <translation>Tage werden gezählt</translation>
    </message>
    <message>
        <source>Of {days} simulated days with such a hand {survived} % keep every area within what most accept. Weakest is the {area}: {usual:.1f} dE00 off on half of the days, {bad:.1f} on one of twenty.</source>
        <translation>Von {days} simulierten Tagen mit einer solchen Hand halten {survived} % jede Fläche in dem, was die meisten hinnehmen. Am schwächsten: {area}, {usual:.1f} dE00 daneben an der Hälfte der Tage, {bad:.1f} an einem von zwanzig.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: about as robust.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: etwa gleich robust.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: it is the more fragile one.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: Er ist der empfindlichere.</translation>
    </message>
    <message>
        <source>The plan you handed in keeps them on {there} %: it is the more robust one.</source>
        <translation>Der abgegebene Plan hält sie an {there} %: Er ist der robustere.</translation>
    </message>
</context>
<context>
    <name>practice window</name>
    <message>
        <source>Practice: leave it to open something else.</source>
        <translation>Übung: Verlassen Sie sie, um etwas anderes zu öffnen.</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Bewertung</translation>
    </message>
    <message>
        <source>Hand in</source>
        <translation>Abgeben</translation>
    </message>
    <message>
        <source>As planned, as it came out</source>
        <translation>Wie geplant, wie geworden</translation>
    </message>
    <message>
        <source>The crown is being made.</source>
        <translation>Die Krone wird gemacht.</translation>
    </message>
    <message>
        <source>Making an exercise</source>
        <translation>Übung wird gemacht</translation>
    </message>
    <message>
        <source>Scoring</source>
        <translation>Wird bewertet</translation>
    </message>
    <message>
        <source>Not kept for later: {trouble}</source>
        <translation>Nicht aufbewahrt: {trouble}</translation>
    </message>
    <message>
        <source>look at an answer</source>
        <translation>eine Lösung ansehen</translation>
    </message>
    <message>
        <source>Point at the crown to read both colours of a place.</source>
        <translation>Zeigen Sie auf die Krone, um beide Farben einer Stelle abzulesen.</translation>
    </message>
    <message>
        <source>Came out {came}; planned {planned}; wall {wall:.1f} mm</source>
        <translation>Geworden {came}; geplant {planned}; Wand {wall:.1f} mm</translation>
    </message>
    <message>
        <source>The coat map is being drawn.</source>
        <translation>Der Auftragsplan wird gezeichnet.</translation>
    </message>
    <message>
        <source>Drawing the coat map</source>
        <translation>Auftragsplan wird gezeichnet</translation>
    </message>
    <message>
        <source>Practice – stainmap</source>
        <translation>Übung – stainmap</translation>
    </message>
    <message>
        <source>Practice</source>
        <translation>Übung</translation>
    </message>
    <message>
        <source>{coats} on {area}</source>
        <translation>{coats} auf {area}</translation>
    </message>
</context>
<context>
    <name>printing flow</name>
    <message>
        <source>Folder for the sheets</source>
        <translation>Ordner für die Blätter</translation>
    </message>
    <message>
        <source>pictures of {name}</source>
        <translation>Bilder von {name}</translation>
    </message>
    <message>
        <source>{name}, page {number}</source>
        <translation>{name}, Seite {number}</translation>
    </message>
    <message>
        <source>Making the sheets</source>
        <translation>Blätter werden gemacht</translation>
    </message>
    <message>
        <source>Writing the sheets</source>
        <translation>Blätter werden geschrieben</translation>
    </message>
    <message>
        <source>The sheets are being made already.</source>
        <translation>Die Blätter werden schon gemacht.</translation>
    </message>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>{count} files</source>
        <translation>{count} Dateien</translation>
    </message>
    <message>
        <source>Wrote {files} into {folder}.</source>
        <translation>{files} in {folder} geschrieben.</translation>
    </message>
    <message>
        <source>Noting what was printed</source>
        <translation>Vermerkt wird, was gedruckt wurde</translation>
    </message>
    <message>
        <source>sheets printed</source>
        <translation>Blätter gedruckt</translation>
    </message>
    <message>
        <source>Sent 1 page to the printer.</source>
        <translation>1 Seite an den Drucker geschickt.</translation>
    </message>
    <message>
        <source>Sent {count} pages to the printer.</source>
        <translation>{count} Seiten an den Drucker geschickt.</translation>
    </message>
    <message>
        <source>The printer cannot be reached. Choose another, or save as PDF.</source>
        <translation>Der Drucker ist nicht erreichbar. Wählen Sie einen anderen, oder speichern Sie als PDF.</translation>
    </message>
    <message>
        <source>Printing the sheets</source>
        <translation>Blätter werden gedruckt</translation>
    </message>
    <message>
        <source>No sheets were made.</source>
        <translation>Es wurden keine Blätter gemacht.</translation>
    </message>
</context>
<context>
    <name>process dialog</name>
    <message>
        <source>Hand and uptake</source>
        <translation>Hand und Aufnahme der Flüssigkeit</translation>
    </message>
    <message>
        <source>A wet hand leaves more in a coat than a dry one. 1.0 is the hand the materials were described with.</source>
        <translation>Eine nasse Hand lässt mit einem Auftrag mehr zurück als eine trockene. 1.0 ist die Hand, mit der die Materialien beschrieben wurden.</translation>
    </message>
    <message>
        <source>Painter</source>
        <translation>Wer aufträgt</translation>
    </message>
    <message>
        <source>as the laboratory calls them</source>
        <translation>wie das Labor sie nennt</translation>
    </message>
    <message>
        <source>Hand factor</source>
        <translation>Handfaktor</translation>
    </message>
    <message>
        <source>assumed until measured</source>
        <translation>angenommen, bis gemessen</translation>
    </message>
    <message>
        <source>Coats to saturation</source>
        <translation>Aufträge bis zur Sättigung</translation>
    </message>
    <message>
        <source>Competition for the same pores</source>
        <translation>Wettstreit um dieselben Poren</translation>
    </message>
    <message>
        <source>Depth from outside</source>
        <translation>Tiefe von außen</translation>
    </message>
    <message>
        <source>Depth from inside</source>
        <translation>Tiefe von innen</translation>
    </message>
    <message>
        <source>Wicking</source>
        <translation>Dochtwirkung</translation>
    </message>
    <message>
        <source>Competition, 0 to 1</source>
        <translation>Wettstreit, 0 bis 1</translation>
    </message>
    <message>
        <source>Depth from outside, mm sintered</source>
        <translation>Tiefe von außen, mm gesintert</translation>
    </message>
    <message>
        <source>Depth from inside, mm sintered</source>
        <translation>Tiefe von innen, mm gesintert</translation>
    </message>
    <message>
        <source>Wicking, mm sintered</source>
        <translation>Dochtwirkung, mm gesintert</translation>
    </message>
</context>
<context>
    <name>progress line</name>
    <message>
        <source>Share done</source>
        <translation>Erledigter Anteil</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Stop the work</source>
        <translation>Arbeit anhalten</translation>
    </message>
    <message>
        <source>Progress: {phrase}</source>
        <translation>Fortschritt: {phrase}</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
</context>
<context>
    <name>reach desk</name>
    <message>
        <source>What can be reached</source>
        <translation>Was erreichbar ist</translation>
    </message>
    <message>
        <source>the bare block</source>
        <translation>der bloße Rohling</translation>
    </message>
</context>
<context>
    <name>reading dialog</name>
    <message>
        <source>{share:.0f} percent sure</source>
        <translation>zu {share:.0f} Prozent sicher</translation>
    </message>
    <message>
        <source>{share:.0f} % sure</source>
        <translation>zu {share:.0f} % sicher</translation>
    </message>
    <message>
        <source>How it was read</source>
        <translation>Wie sie gelesen wurde</translation>
    </message>
    <message>
        <source>What was noticed</source>
        <translation>Was bemerkt wurde</translation>
    </message>
    <message>
        <source>cut off the crown</source>
        <translation>Krone abschneiden</translation>
    </message>
    <message>
        <source>take the whole file again</source>
        <translation>wieder die ganze Datei nehmen</translation>
    </message>
    <message>
        <source>it is right</source>
        <translation>es stimmt</translation>
    </message>
    <message>
        <source>{name}: it is right</source>
        <translation>{name}: es stimmt</translation>
    </message>
</context>
<context>
    <name>reading rows</name>
    <message>
        <source>show the biting side</source>
        <translation>Kauseite zeigen</translation>
    </message>
    <message>
        <source>move it with the brush</source>
        <translation>mit dem Pinsel verschieben</translation>
    </message>
    <message>
        <source>set the wall</source>
        <translation>Wand setzen</translation>
    </message>
    <message>
        <source>show where they part</source>
        <translation>zeigen, wo sie sich trennen</translation>
    </message>
    <message>
        <source>name the teeth</source>
        <translation>Zähne nennen</translation>
    </message>
    <message>
        <source>say the roles</source>
        <translation>Rollen angeben</translation>
    </message>
    <message>
        <source>set the sections</source>
        <translation>Querschnitte setzen</translation>
    </message>
    <message>
        <source>show mesial</source>
        <translation>mesial zeigen</translation>
    </message>
    <message>
        <source>show the outer side</source>
        <translation>Außenseite zeigen</translation>
    </message>
    <message>
        <source>set by you</source>
        <translation>von Ihnen gesetzt</translation>
    </message>
    <message>
        <source>not read</source>
        <translation>nicht gelesen</translation>
    </message>
    <message>
        <source>a guess, please check</source>
        <translation>eine Vermutung, bitte prüfen</translation>
    </message>
    <message>
        <source>likely</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>sure</source>
        <translation>sicher</translation>
    </message>
    <message>
        <source>A crown with its inner surface.</source>
        <translation>Eine Krone mit Innenfläche.</translation>
    </message>
    <message>
        <source>A bridge of {count} units.</source>
        <translation>Eine Brücke aus {count} Einheiten.</translation>
    </message>
    <message>
        <source>A solid crown: it has no inner surface, so a wall is assumed.</source>
        <translation>Eine massive Krone: Sie hat keine Innenfläche, darum wird eine Wand angenommen.</translation>
    </message>
    <message>
        <source>A single sheet: it has no inner surface, so a wall is assumed.</source>
        <translation>Eine einzelne Fläche: Sie hat keine Innenfläche, darum wird eine Wand angenommen.</translation>
    </message>
    <message>
        <source>A tooth with its roots. The crown can be cut off.</source>
        <translation>Ein Zahn mit Wurzeln. Die Krone kann abgeschnitten werden.</translation>
    </message>
    <message>
        <source>A jaw, or a piece of one. The crown that is meant can be cut off.</source>
        <translation>Ein Kiefer oder ein Stück davon. Die gemeinte Krone kann abgeschnitten werden.</translation>
    </message>
    <message>
        <source>Several bodies, of which the largest was read.</source>
        <translation>Mehrere Körper, von denen der größte gelesen wurde.</translation>
    </message>
    <message>
        <source>Nothing that could be read as a crown.</source>
        <translation>Nichts, was als Krone zu lesen wäre.</translation>
    </message>
    <message>
        <source>Part of the file was cut away.</source>
        <translation>Ein Teil der Datei wurde weggeschnitten.</translation>
    </message>
    <message>
        <source>{occlusal} side</source>
        <translation>{occlusal}e Seite</translation>
    </message>
    <message>
        <source>Margin</source>
        <translation>Kronenrand</translation>
    </message>
    <message>
        <source>Inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Roles</source>
        <translation>Rollen</translation>
    </message>
    <message>
        <source>Connectors</source>
        <translation>Verbinder</translation>
    </message>
    <message>
        <source>Mesial</source>
        <translation>Mesial</translation>
    </message>
    <message>
        <source>The shape does not tell.</source>
        <translation>Die Form sagt es nicht.</translation>
    </message>
    <message>
        <source>{axis} of the file</source>
        <translation>{axis} der Datei</translation>
    </message>
    <message>
        <source>Along {name}.</source>
        <translation>Entlang {name}.</translation>
    </message>
    <message>
        <source>{off:.0f}° from {name}.</source>
        <translation>{off:.0f}° von {name}.</translation>
    </message>
    <message>
        <source>Follows from mesial and the tooth number.</source>
        <translation>Folgt aus mesial und der Zahnnummer.</translation>
    </message>
    <message>
        <source>the border of the sheet</source>
        <translation>den Rand der Fläche</translation>
    </message>
    <message>
        <source>the edge of the cavity</source>
        <translation>die Kante der Höhlung</translation>
    </message>
    <message>
        <source>the crease of the base</source>
        <translation>die Kante des Bodens</translation>
    </message>
    <message>
        <source>None was found.</source>
        <translation>Keiner wurde gefunden.</translation>
    </message>
    <message>
        <source>{length:.1f} mm, along {where}.</source>
        <translation>{length:.1f} mm, entlang: {where}.</translation>
    </message>
    <message>
        <source>None: a wall of {wall:.2f} mm is assumed.</source>
        <translation>Keine: Eine Wand von {wall:.2f} mm wird angenommen.</translation>
    </message>
    <message>
        <source>{cavity:.0f} mm², and a rim of {rim:.0f} mm².</source>
        <translation>{cavity:.0f} mm² und ein Saum von {rim:.0f} mm².</translation>
    </message>
    <message>
        <source>{numbers}, one unit.</source>
        <translation>{numbers}, eine Einheit.</translation>
    </message>
    <message>
        <source>None was measured.</source>
        <translation>Keiner wurde gemessen.</translation>
    </message>
</context>
<context>
    <name>recent files</name>
    <message>
        <source>Nothing has been opened yet</source>
        <translation>Noch wurde nichts geöffnet</translation>
    </message>
    <message>
        <source>&amp;Forget these</source>
        <translation>Liste &amp;vergessen</translation>
    </message>
</context>
<context>
    <name>recovery desk</name>
    <message>
        <source>Unsaved work</source>
        <translation>Nicht gespeicherte Arbeit</translation>
    </message>
    <message>
        <source>The program ended without saving. This was kept; what is opened counts as not saved until it is saved.</source>
        <translation>Das Programm endete, ohne zu speichern. Dies wurde aufbewahrt; was geöffnet wird, gilt als nicht gespeichert, bis es gespeichert ist.</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Throw away</source>
        <translation>Wegwerfen</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Später</translation>
    </message>
    <message>
        <source>{label}, never saved</source>
        <translation>{label}, nie gespeichert</translation>
    </message>
    <message>
        <source>{label}, saved last as {file}</source>
        <translation>{label}, zuletzt als {file} gespeichert</translation>
    </message>
    <message>
        <source>Unsaved work cannot be kept</source>
        <translation>Ungespeicherte Arbeit kann nicht aufbewahrt werden</translation>
    </message>
    <message>
        <source>{problem} Save the case now and then: after a crash only its file would be left.</source>
        <translation>{problem} Speichern Sie den Fall ab und zu: Nach einem Absturz bliebe nur seine Datei.</translation>
    </message>
    <message>
        <source>Unsaved work is kept again.</source>
        <translation>Ungespeicherte Arbeit wird wieder aufbewahrt.</translation>
    </message>
</context>
<context>
    <name>row card</name>
    <message>
        <source>Steps to the neighbours</source>
        <translation>Schritte zu den Nachbarn</translation>
    </message>
    <message>
        <source>Value alone</source>
        <translation>Nur Helligkeit</translation>
    </message>
    <message>
        <source>Without colour (V)</source>
        <translation>Ohne Farbe (V)</translation>
    </message>
    <message>
        <source>Neighbours...</source>
        <translation>Nachbarn...</translation>
    </message>
    <message>
        <source>Meshes of the neighbours</source>
        <translation>Netze der Nachbarn</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Stop making the neighbours</source>
        <translation>Nachbarn nicht weiter machen</translation>
    </message>
    <message>
        <source>{area} less that of {number}: L* {lightness}, C* {chroma}</source>
        <translation>{area} minus {number}: L* {lightness}, C* {chroma}</translation>
    </message>
    <message>
        <source>crown less neighbour</source>
        <translation>Krone minus Nachbar</translation>
    </message>
</context>
<context>
    <name>row desk</name>
    <message>
        <source>making the neighbours</source>
        <translation>Nachbarn werden gemacht</translation>
    </message>
    <message>
        <source>grey neighbours: nothing is wanted yet</source>
        <translation>graue Nachbarn: Noch ist nichts gewünscht</translation>
    </message>
    <message>
        <source>light is being worked out</source>
        <translation>Licht wird ausgerechnet</translation>
    </message>
    <message>
        <source>stopped; choose the look again to go on</source>
        <translation>angehalten; wählen Sie die Ansicht wieder</translation>
    </message>
    <message>
        <source>no neighbours: see the status line</source>
        <translation>keine Nachbarn: siehe Statuszeile</translation>
    </message>
    <message>
        <source>Making the neighbours</source>
        <translation>Nachbarn werden gemacht</translation>
    </message>
    <message>
        <source>grey neighbours: the wanted colour</source>
        <translation>graue Nachbarn: die gewünschte Farbe</translation>
    </message>
    <message>
        <source>steps to the neighbours</source>
        <translation>Schritte zu den Nachbarn</translation>
    </message>
    <message>
        <source>Steps to the neighbours</source>
        <translation>Schritte zu den Nachbarn</translation>
    </message>
    <message>
        <source>neighbours from numbers: nobody&apos;s teeth</source>
        <translation>Nachbarn aus Zahlen: niemandes Zähne</translation>
    </message>
    <message>
        <source>{numbers} from numbers: nobody&apos;s teeth</source>
        <translation>{numbers} aus Zahlen: niemandes Zähne</translation>
    </message>
    <message>
        <source>coloured by the shades given of them</source>
        <translation>gefärbt nach ihren angegebenen Farben</translation>
    </message>
    <message>
        <source>coloured by their own shade or the wanted one</source>
        <translation>gefärbt nach eigener Farbe oder dem Ziel</translation>
    </message>
    <message>
        <source>coloured as is wanted of the crown, under D65</source>
        <translation>gefärbt nach dem Ziel der Krone, unter D65</translation>
    </message>
    <message>
        <source>light at the back {percent:.0f} %; seen from 600 mm</source>
        <translation>Licht hinten {percent:.0f} %; gesehen aus 600 mm</translation>
    </message>
</context>
<context>
    <name>row dialog</name>
    <message>
        <source>made from numbers</source>
        <translation>aus Zahlen gemacht</translation>
    </message>
    <message>
        <source>Neighbours in the row</source>
        <translation>Nachbarn in der Reihe</translation>
    </message>
    <message>
        <source>A neighbour is made from numbers, as nobody has it, or read from a mesh. A mesh that was exported beside the crown, in the same coordinates, stays where it stands; others are stood in the arch.</source>
        <translation>Ein Nachbar wird aus Zahlen gemacht, wie ihn niemand hat, oder aus einem Netz gelesen. Ein Netz, das neben der Krone in denselben Koordinaten exportiert wurde, bleibt, wo es steht; andere werden in den Zahnbogen gestellt.</translation>
    </message>
    <message>
        <source>Open a mesh...</source>
        <translation>Netz öffnen...</translation>
    </message>
    <message>
        <source>Make it</source>
        <translation>Machen</translation>
    </message>
    <message>
        <source>Open a mesh of {number}</source>
        <translation>Netz von {number} öffnen</translation>
    </message>
    <message>
        <source>Make {number} from numbers</source>
        <translation>{number} aus Zahlen machen</translation>
    </message>
    <message>
        <source>Mesh of {number}</source>
        <translation>Netz von {number}</translation>
    </message>
    <message>
        <source>Meshes ({endings});;All files (*)</source>
        <translation>Netze ({endings});;Alle Dateien (*)</translation>
    </message>
</context>
<context>
    <name>run desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>change what is mixed</source>
        <translation>ändern, was gemischt wird</translation>
    </message>
    <message>
        <source>The plan paints connectors and embrasures already.</source>
        <translation>Der Plan färbt Verbinder und Interdentalräume schon.</translation>
    </message>
    <message>
        <source>accent over the connectors</source>
        <translation>Akzent über die Verbinder</translation>
    </message>
    <message>
        <source>state on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>State on the bench: {done}.</source>
        <translation>Stand der Arbeit: {done}.</translation>
    </message>
</context>
<context>
    <name>run strip</name>
    <message>
        <source>Open a crown to see how long it takes.</source>
        <translation>Öffnen Sie eine Krone, um zu sehen, wie lange es dauert.</translation>
    </message>
    <message>
        <source>Run</source>
        <translation>Ablauf</translation>
    </message>
    <message>
        <source>{stage} {minutes} from {start:%H:%M}</source>
        <translation>{stage} {minutes} ab {start:%H:%M}</translation>
    </message>
    <message>
        <source>ready {day} {end:%H:%M}</source>
        <translation>fertig {day} {end:%H:%M}</translation>
    </message>
    <message>
        <source>lengths not to scale</source>
        <translation>Längen nicht maßstäblich</translation>
    </message>
    <message>
        <source>{stage}, {minutes}: open its page</source>
        <translation>{stage}, {minutes}: Seite öffnen</translation>
    </message>
    <message>
        <source>in the furnace</source>
        <translation>im Ofen</translation>
    </message>
    <message>
        <source>ready {day},</source>
        <translation>fertig {day},</translation>
    </message>
    <message>
        <source>if started now, {start:%H:%M}</source>
        <translation>bei Beginn jetzt, {start:%H:%M}</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>tomorrow</source>
        <translation>morgen</translation>
    </message>
    <message>
        <source>in {days} days</source>
        <translation>in {days} Tagen</translation>
    </message>
</context>
<context>
    <name>saving flow</name>
    <message>
        <source>Save the case</source>
        <translation>Fall speichern</translation>
    </message>
    <message>
        <source>Cases (*{suffix})</source>
        <translation>Fälle (*{suffix})</translation>
    </message>
    <message>
        <source>Saved as {path}.</source>
        <translation>Gespeichert als {path}.</translation>
    </message>
    <message>
        <source>Save it under another name now?</source>
        <translation>Jetzt unter einem anderen Namen speichern?</translation>
    </message>
    <message>
        <source>What you have made is kept meanwhile, and is there again after the next start.</source>
        <translation>Was Sie gemacht haben, wird inzwischen aufbewahrt und ist nach dem nächsten Start wieder da.</translation>
    </message>
    <message>
        <source>Not saved</source>
        <translation>Nicht gespeichert</translation>
    </message>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportieren</translation>
    </message>
    <message>
        <source>Not exported</source>
        <translation>Nicht exportiert</translation>
    </message>
    <message>
        <source>Exported {exporting}.</source>
        <translation>{exporting} exportiert.</translation>
    </message>
    <message>
        <source>The case has changes that are not saved.</source>
        <translation>Der Fall hat Änderungen, die nicht gespeichert sind.</translation>
    </message>
</context>
<context>
    <name>section window</name>
    <message>
        <source>nothing has been predicted yet</source>
        <translation>noch ist nichts vorhergesagt</translation>
    </message>
    <message>
        <source>Section</source>
        <translation>Schnitt</translation>
    </message>
    <message>
        <source>the plane misses the crown</source>
        <translation>die Ebene verfehlt die Krone</translation>
    </message>
    <message>
        <source>outer surface</source>
        <translation>Außenfläche</translation>
    </message>
    <message>
        <source>inner surface</source>
        <translation>Innenfläche</translation>
    </message>
    <message>
        <source>{side}: wall {wall:.2f} mm, no stain</source>
        <translation>{side}: Wand {wall:.2f} mm, keine Färbung</translation>
    </message>
    <message>
        <source>{side}: wall {wall:.2f} mm, stained {stained:.2f} mm deep, {coats:.1f} coats</source>
        <translation>{side}: Wand {wall:.2f} mm, {stained:.2f} mm tief gefärbt, {coats:.1f} Aufträge</translation>
    </message>
    <message>
        <source>no wall above the margin here</source>
        <translation>hier keine Wand über dem Kronenrand</translation>
    </message>
    <message>
        <source>thinnest wall {wall:.2f} mm, below the block&apos;s minimum {least:.2f}</source>
        <translation>dünnste Wand {wall:.2f} mm, unter dem Mindestmaß {least:.2f} des Rohlings</translation>
    </message>
    <message>
        <source>thinnest wall {wall:.2f} mm, above the block&apos;s minimum {least:.2f}</source>
        <translation>dünnste Wand {wall:.2f} mm, über dem Mindestmaß {least:.2f} des Rohlings</translation>
    </message>
    <message>
        <source>Plane</source>
        <translation>Ebene</translation>
    </message>
    <message>
        <source>Where the plane lies</source>
        <translation>Wo die Ebene liegt</translation>
    </message>
    <message>
        <source>point at the section to read a place</source>
        <translation>auf den Schnitt zeigen, um eine Stelle abzulesen</translation>
    </message>
    <message>
        <source>stained depth: the darker, the more coats. One square is one millimetre.</source>
        <translation>gefärbte Tiefe: je dunkler, desto mehr Aufträge. Ein Kästchen ist ein Millimeter.</translation>
    </message>
</context>
<context>
    <name>settings</name>
    <message>
        <source>The settings hold until the program ends; they cannot be kept. {why}</source>
        <translation>Die Einstellungen gelten, bis das Programm endet; sie können nicht aufbewahrt werden. {why}</translation>
    </message>
    <message>
        <source>The window speaks the other language from the next start on.</source>
        <translation>Ab dem nächsten Start spricht das Fenster die andere Sprache.</translation>
    </message>
    <message>
        <source>The window has {percent} % from the next start on.</source>
        <translation>Ab dem nächsten Start hat das Fenster {percent} %.</translation>
    </message>
    <message>
        <source>The open case keeps the volume of a drop that was set for it.</source>
        <translation>Der offene Fall behält das Tropfenvolumen, das für ihn eingestellt wurde.</translation>
    </message>
    <message>
        <source>set the volume of a drop to {volume} mL</source>
        <translation>Tropfenvolumen auf {volume} mL setzen</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Pages of the settings</source>
        <translation>Seiten der Einstellungen</translation>
    </message>
    <message>
        <source>Window</source>
        <translation>Fenster</translation>
    </message>
    <message>
        <source>Laboratory</source>
        <translation>Labor</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>This page as it came</source>
        <translation>Diese Seite wie geliefert</translation>
    </message>
    <message>
        <source>as the desktop has it</source>
        <translation>wie der Desktop</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>the program&apos;s own</source>
        <translation>die des Programms</translation>
    </message>
    <message>
        <source>the desktop&apos;s</source>
        <translation>die des Desktops</translation>
    </message>
    <message>
        <source>as the desktop asks, where it tells</source>
        <translation>wie der Desktop es wünscht, wo er es sagt</translation>
    </message>
    <message>
        <source>everything turns and folds</source>
        <translation>alles dreht sich und klappt sichtbar</translation>
    </message>
    <message>
        <source>everything is in its place at once</source>
        <translation>alles ist sofort an seinem Platz</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>The surround of the crown stays neutral in all.</source>
        <translation>Die Umgebung der Krone bleibt in allen neutral.</translation>
    </message>
    <message>
        <source>Typeface</source>
        <translation>Schrift</translation>
    </message>
    <message>
        <source>Figures of the program&apos;s own stand below one another in tables.</source>
        <translation>Die Ziffern der eigenen stehen in Tabellen genau untereinander.</translation>
    </message>
    <message>
        <source>Size of text and window</source>
        <translation>Größe von Text und Fenster</translation>
    </message>
    <message>
        <source>Text, fields and drawings alike, from the next start on. The window needs a screen of 1024 x 700 times this.</source>
        <translation>Text, Felder und Zeichnungen gleichermaßen, ab dem nächsten Start. Das Fenster braucht einen Bildschirm vom Entsprechenden von 1024 x 700.</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>The crown turns to a place within 150 ms, so that the eye can follow, or is there at once.</source>
        <translation>Die Krone dreht sich in 150 ms zu einer Stelle, damit das Auge folgen kann, oder ist sofort dort.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>From the next start on. Paper, exported files, names of materials, the manual and the evidence stay English; numbers keep the point.</source>
        <translation>Ab dem nächsten Start. Papier, exportierte Dateien, Namen von Materialien, Handbuch und Belege bleiben englisch; Zahlen behalten den Punkt.</translation>
    </message>
    <message>
        <source>°C and °F</source>
        <translation>°C und °F</translation>
    </message>
    <message>
        <source>°C only</source>
        <translation>nur °C</translation>
    </message>
    <message>
        <source>°F only</source>
        <translation>nur °F</translation>
    </message>
    <message>
        <source>the first of the materials</source>
        <translation>das erste der Materialien</translation>
    </message>
    <message>
        <source>Temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>In the run, on its pages, and on all sheets.</source>
        <translation>Im Ablauf, auf seinen Seiten und auf allen Blättern.</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>What sheets are shown and saved on, until another is asked.</source>
        <translation>Worauf Blätter gezeigt und gesichert werden, bis ein anderes gewünscht wird.</translation>
    </message>
    <message>
        <source>Volume of a drop</source>
        <translation>Volumen eines Tropfens</translation>
    </message>
    <message>
        <source>How many drops a jar needs goes by it. 0.05 mL is usual, with 15 % of error (USP &lt;1101&gt;). New cases begin with it, and the open one follows unless it has its own.</source>
        <translation>Danach richtet sich, wie viele Tropfen ein Napf braucht. Üblich sind 0.05 mL, mit 15 % Fehler (USP &lt;1101&gt;). Neue Fälle beginnen damit, und der offene folgt, wenn er keinen eigenen Wert hat.</translation>
    </message>
    <message>
        <source>Sintering programme</source>
        <translation>Sinterprogramm</translation>
    </message>
    <message>
        <source>What new cases begin with. A case keeps its own; change that beside its block.</source>
        <translation>Womit neue Fälle beginnen. Ein Fall behält seines; es wird neben seinem Rohling geändert.</translation>
    </message>
    <message>
        <source>Drops counted</source>
        <translation>Gezählte Tropfen</translation>
    </message>
    <message>
        <source>Millilitres they fill</source>
        <translation>Milliliter, die sie füllen</translation>
    </message>
    <message>
        <source> drops fill</source>
        <translation> Tropfen füllen</translation>
    </message>
    <message>
        <source>Take the count</source>
        <translation>Zählung übernehmen</translation>
    </message>
    <message>
        <source>Count the drops of your own pipette into a measure.</source>
        <translation>Zählen Sie die Tropfen Ihrer Pipette in ein Messgefäß.</translation>
    </message>
    <message>
        <source>One drop has {volume} mL.</source>
        <translation>Ein Tropfen hat {volume} mL.</translation>
    </message>
    <message>
        <source>{programme} (not among the materials at hand)</source>
        <translation>{programme} (nicht unter den vorhandenen Materialien)</translation>
    </message>
    <message>
        <source>Find a command or a key</source>
        <translation>Befehl oder Taste suchen</translation>
    </message>
    <message>
        <source>find a command or a key</source>
        <translation>Befehl oder Taste suchen</translation>
    </message>
    <message>
        <source>New key</source>
        <translation>Neue Taste</translation>
    </message>
    <message>
        <source>Give it this key</source>
        <translation>Diese Taste geben</translation>
    </message>
    <message>
        <source>No key</source>
        <translation>Keine Taste</translation>
    </message>
    <message>
        <source>As it came</source>
        <translation>Wie geliefert</translation>
    </message>
    <message>
        <source>All as they came</source>
        <translation>Alle wie geliefert</translation>
    </message>
    <message>
        <source>&amp;New key</source>
        <translation>&amp;Neue Taste</translation>
    </message>
    <message>
        <source>What came of it</source>
        <translation>Was daraus wurde</translation>
    </message>
    <message>
        <source>command</source>
        <translation>Befehl</translation>
    </message>
    <message>
        <source>key</source>
        <translation>Taste</translation>
    </message>
    <message>
        <source>as it came</source>
        <translation>wie geliefert</translation>
    </message>
    <message>
        <source>Commands and their keys</source>
        <translation>Befehle und ihre Tasten</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>{command} has {key} now.</source>
        <translation>{command} hat jetzt {key}.</translation>
    </message>
    <message>
        <source>{command} has no key now.</source>
        <translation>{command} hat jetzt keine Taste.</translation>
    </message>
    <message>
        <source>Tool &gt; {name}</source>
        <translation>Werkzeug &gt; {name}</translation>
    </message>
</context>
<context>
    <name>shade row</name>
    <message>
        <source>not read</source>
        <translation>nicht gelesen</translation>
    </message>
    <message>
        <source>tab</source>
        <translation>Farbmuster</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>photograph</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>{name}: how it was read</source>
        <translation>{name}: wie abgelesen</translation>
    </message>
    <message>
        <source>{name}: plus or minus</source>
        <translation>{name}: plus oder minus</translation>
    </message>
    <message>
        <source>{name}: colour on this screen</source>
        <translation>{name}: Farbe auf diesem Bildschirm</translation>
    </message>
    <message>
        <source>cannot be compared</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <source>from the picture</source>
        <translation>aus dem Bild</translation>
    </message>
    <message>
        <source>{name}: tab</source>
        <translation>{name}: Farbmuster</translation>
    </message>
</context>
<context>
    <name>sheet preview</name>
    <message>
        <source>Sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>Paper format</source>
        <translation>Papierformat</translation>
    </message>
    <message>
        <source>1 page, printed in true size.</source>
        <translation>1 Seite, in wahrer Größe gedruckt.</translation>
    </message>
    <message>
        <source>{count} pages, printed in true size.</source>
        <translation>{count} Seiten, in wahrer Größe gedruckt.</translation>
    </message>
    <message>
        <source>Save as PDF...</source>
        <translation>Als PDF speichern...</translation>
    </message>
    <message>
        <source>Save as pictures...</source>
        <translation>Als Bilder speichern...</translation>
    </message>
    <message>
        <source>Print...</source>
        <translation>Drucken...</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>side panels</name>
    <message>
        <source>Plan</source>
        <translation>Plan</translation>
    </message>
    <message>
        <source>coats as painted</source>
        <translation>wie aufgetragen</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Add a step</source>
        <translation>Schritt hinzufügen</translation>
    </message>
    <message>
        <source>Add a step at the end</source>
        <translation>Schritt am Ende hinzufügen</translation>
    </message>
    <message>
        <source>Suggest coats</source>
        <translation>Vorschlagen</translation>
    </message>
    <message>
        <source>Search for coats that come near what is wanted (Ctrl+G)</source>
        <translation>Aufträge suchen, die dem Ziel nahe kommen (Strg+G)</translation>
    </message>
    <message>
        <source>Value ladder</source>
        <translation>Helligkeitsleiter</translation>
    </message>
    <message>
        <source>Drag to move this panel; double-click to let it float</source>
        <translation>Ziehen verschiebt dieses Feld; ein Doppelklick löst es</translation>
    </message>
</context>
<context>
    <name>stage dialogs</name>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>areas</source>
        <translation>Flächen</translation>
    </message>
    <message>
        <source>units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>rounds</source>
        <translation>Runden</translation>
    </message>
    <message>
        <source>minutes</source>
        <translation>Minuten</translation>
    </message>
    <message>
        <source>The plan keeps to it.</source>
        <translation>Der Plan hält sich daran.</translation>
    </message>
    <message>
        <source>All coats take {time}, assumed: a minute of brush for each unit and {soak:g} of soak, in which other units are painted.</source>
        <translation>Alle Aufträge dauern {time}, angenommen: je Einheit eine Minute Pinsel und {soak:g} Einziehen, währenddessen andere Einheiten aufgetragen werden.</translation>
    </message>
    <message>
        <source>Dry</source>
        <translation>Trocknen</translation>
    </message>
    <message>
        <source>Sintering wet work cracks it. One single unit dries 10 min at {temperature}, common practice; 5 min for each further unit and 10 for a bridge are assumed. The makers&apos; instructions for use decide.</source>
        <translation>Nass gesinterte Arbeiten reißen. Eine einzelne Einheit trocknet 10 min bei {temperature}, übliche Praxis; 5 min für jede weitere Einheit und 10 für eine Brücke sind angenommen. Es entscheiden die Gebrauchsanweisungen der Hersteller.</translation>
    </message>
    <message>
        <source>here</source>
        <translation>hier</translation>
    </message>
    <message>
        <source>A furnace with a drying stage of its own: give its programme own_drying_minutes among the laboratory&apos;s materials.</source>
        <translation>Ein Ofen mit eigener Trockenstufe: Geben Sie seinem Programm in den Materialien des Labors own_drying_minutes.</translation>
    </message>
    <message>
        <source>Sinter and cool</source>
        <translation>Sintern und Abkühlen</translation>
    </message>
    <message>
        <source>Programme {name}: {minutes} from cold to opening, {sinter} up to the end of the last hold and {cool} of cooling; by its time it counts as {time_class}.</source>
        <translation>Programm {name}: {minutes} von kalt bis zum Öffnen, {sinter} bis zum Ende der letzten Haltezeit und {cool} Abkühlen; nach seiner Zeit gilt es als {time_class}.</translation>
    </message>
    <message>
        <source>to</source>
        <translation>auf</translation>
    </message>
    <message>
        <source>within</source>
        <translation>in</translation>
    </message>
    <message>
        <source>at</source>
        <translation>nach</translation>
    </message>
    <message>
        <source>per minute</source>
        <translation>je Minute</translation>
    </message>
    <message>
        <source>Do not open above {temperature}. {name}: {strength}. {statement}</source>
        <translation>Nicht über {temperature} öffnen. {name}: {strength}. {statement}</translation>
    </message>
    <message>
        <source>Compare furnaces...</source>
        <translation>Öfen vergleichen...</translation>
    </message>
    <message>
        <source>Furnace curve</source>
        <translation>Ofenkurve</translation>
    </message>
    <message>
        <source>cool</source>
        <translation>Abkühlen</translation>
    </message>
    <message>
        <source>streaks from {area}</source>
        <translation>Streifen aus {area}</translation>
    </message>
    <message>
        <source>brushed by hand</source>
        <translation>von Hand gepinselt</translation>
    </message>
    <message>
        <source>nothing yet</source>
        <translation>noch nichts</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{units}, a bridge</source>
        <translation>{units}, eine Brücke</translation>
    </message>
    <message>
        <source>where</source>
        <translation>wo</translation>
    </message>
    <message>
        <source>in the furnace, by {programme}</source>
        <translation>im Ofen, durch {programme}</translation>
    </message>
    <message>
        <source>oven, {temperature}</source>
        <translation>Trockenofen, {temperature}</translation>
    </message>
    <message>
        <source>how long</source>
        <translation>wie lange</translation>
    </message>
    <message>
        <source>hold</source>
        <translation>halten</translation>
    </message>
</context>
<context>
    <name>start</name>
    <message>
        <source>OpenGL 3.3 is missing here: the crown is drawn by the processor and turns more coarsely. All else works as usual.</source>
        <translation>OpenGL 3.3 fehlt hier: Die Krone wird vom Prozessor gezeichnet und dreht sich gröber. Alles andere arbeitet wie gewohnt.</translation>
    </message>
</context>
<context>
    <name>start strip</name>
    <message>
        <source>This is a sample, already planned.</source>
        <translation>Das ist ein Muster, schon geplant.</translation>
    </message>
    <message>
        <source>A sample</source>
        <translation>Ein Muster</translation>
    </message>
    <message>
        <source>Guided first plan</source>
        <translation>Geführter erster Plan</translation>
    </message>
    <message>
        <source>Go on with the first plan</source>
        <translation>Ersten Plan fortsetzen</translation>
    </message>
    <message>
        <source>First start</source>
        <translation>Erster Start</translation>
    </message>
    <message>
        <source>Turn it with the right button, point at it to read a colour.</source>
        <translation>Mit der rechten Taste drehen, zum Ablesen einer Farbe darauf zeigen.</translation>
    </message>
    <message>
        <source>Open a mesh</source>
        <translation>Netz öffnen</translation>
    </message>
    <message>
        <source>New practice</source>
        <translation>Neue Übung</translation>
    </message>
    <message>
        <source>Six steps on this window, each done by yourself</source>
        <translation>Sechs Schritte an diesem Fenster, jeder von Ihnen selbst getan</translation>
    </message>
    <message>
        <source>Close this strip</source>
        <translation>Diesen Streifen schließen</translation>
    </message>
</context>
<context>
    <name>status line</name>
    <message>
        <source>Status</source>
        <translation>Status</translation>
    </message>
    <message>
        <source>Under the pointer</source>
        <translation>Unter dem Zeiger</translation>
    </message>
</context>
<context>
    <name>step menu</name>
    <message>
        <source>Step {step}</source>
        <translation>Schritt {step}</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Copy with names</source>
        <translation>Mit Namen kopieren</translation>
    </message>
    <message>
        <source>Cut</source>
        <translation>Ausschneiden</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Add a step after this one</source>
        <translation>Schritt nach diesem hinzufügen</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Diesen Schritt entfernen</translation>
    </message>
    <message>
        <source>Set these coats free</source>
        <translation>Diese Aufträge freigeben</translation>
    </message>
    <message>
        <source>Lock these coats</source>
        <translation>Diese Aufträge sperren</translation>
    </message>
    <message>
        <source>Paint it earlier</source>
        <translation>Früher auftragen</translation>
    </message>
    <message>
        <source>Paint it later</source>
        <translation>Später auftragen</translation>
    </message>
    <message>
        <source>Take it from</source>
        <translation>Nehmen aus</translation>
    </message>
    <message>
        <source>jar {number}, {liquid}</source>
        <translation>Napf {number}, {liquid}</translation>
    </message>
</context>
<context>
    <name>streaks dialog</name>
    <message>
        <source>towards the margin</source>
        <translation>zum Kronenrand hin</translation>
    </message>
    <message>
        <source>towards the biting edge</source>
        <translation>zur Kaukante hin</translation>
    </message>
    <message>
        <source>Streaks</source>
        <translation>Streifen</translation>
    </message>
    <message>
        <source>A few tapered strokes that carry the coat of a step from one zone into the next, on the facial and on the lingual side. Lengths are sintered mm.</source>
        <translation>Einige zulaufende Striche, die den Auftrag eines Schritts aus einer Zone in die nächste tragen, auf der fazialen und der lingualen Seite. Längen sind gesinterte mm.</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Schritt</translation>
    </message>
    <message>
        <source>Add streaks</source>
        <translation>Streifen hinzufügen</translation>
    </message>
    <message>
        <source>from</source>
        <translation>von</translation>
    </message>
    <message>
        <source>they run</source>
        <translation>sie laufen</translation>
    </message>
    <message>
        <source>number</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>This step has no streaks.</source>
        <translation>Dieser Schritt hat keine Streifen.</translation>
    </message>
    <message>
        <source>From {name} nothing leads that way: choose another zone or direction.</source>
        <translation>Von {name} führt dorthin nichts: Wählen Sie eine andere Zone oder Richtung.</translation>
    </message>
    <message>
        <source>From zone</source>
        <translation>Aus Zone</translation>
    </message>
    <message>
        <source>They run</source>
        <translation>Sie laufen</translation>
    </message>
    <message>
        <source>Number of strokes on each side</source>
        <translation>Zahl der Striche auf jeder Seite</translation>
    </message>
    <message>
        <source>Coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>{name}, {low} to {high}</source>
        <translation>{name}, {low} bis {high}</translation>
    </message>
    <message>
        <source>Length in sintered mm</source>
        <translation>Länge in gesinterten mm</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
</context>
<context>
    <name>strength class</name>
    <message>
        <source>Strength class: of the material, after published ranges; what a programme does to it is not predicted. The makers of block and oven decide which cycles are allowed.</source>
        <translation>Festigkeitsklasse: des Materials, nach veröffentlichten Bereichen; was ein Programm damit macht, wird nicht vorhergesagt. Welche Zyklen erlaubt sind, entscheiden die Hersteller von Rohling und Ofen.</translation>
    </message>
    <message>
        <source>spans of four units and more</source>
        <translation>Spannen von vier und mehr Einheiten</translation>
    </message>
    <message>
        <source>spans of up to three units, molars too</source>
        <translation>Spannen bis zu drei Einheiten, auch Molaren</translation>
    </message>
    <message>
        <source>single crowns, and spans of three units up to the second premolar</source>
        <translation>Einzelkronen und Spannen von drei Einheiten bis zum zweiten Prämolaren</translation>
    </message>
    <message>
        <source>single crowns, bonded</source>
        <translation>Einzelkronen, adhäsiv befestigt</translation>
    </message>
    <message>
        <source>{kinds}, {low} to {high} MPa: class {number}, {use}</source>
        <translation>{kinds}, {low} bis {high} MPa: Klasse {number}, {use}</translation>
    </message>
</context>
<context>
    <name>suggest blocks</name>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>wanted | bare</source>
        <translation>Ziel | bloß</translation>
    </message>
    <message>
        <source>wanted | best</source>
        <translation>Ziel | bestes</translation>
    </message>
    <message>
        <source>body</source>
        <translation>Körper</translation>
    </message>
    <message>
        <source>furthest</source>
        <translation>fernste</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>coats</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Blocks are compared after the coats.</source>
        <translation>Rohlinge werden nach den Aufträgen verglichen.</translation>
    </message>
    <message>
        <source>Blocks side by side</source>
        <translation>Rohlinge nebeneinander</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Usual choice</source>
        <translation>Übliche Wahl</translation>
    </message>
    <message>
        <source>Computed</source>
        <translation>Errechnet</translation>
    </message>
    <message>
        <source>{block}, bare</source>
        <translation>{block}, bloß</translation>
    </message>
    <message>
        <source>{block}, stained</source>
        <translation>{block}, gefärbt</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Take {block} with its plan</source>
        <translation>{block} mit seinem Plan nehmen</translation>
    </message>
</context>
<context>
    <name>suggest desk</name>
    <message>
        <source>The prediction is not ready yet.</source>
        <translation>Die Vorhersage ist noch nicht fertig.</translation>
    </message>
    <message>
        <source>Comparing blocks</source>
        <translation>Rohlinge werden verglichen</translation>
    </message>
    <message>
        <source>Suggesting coats</source>
        <translation>Aufträge werden vorgeschlagen</translation>
    </message>
    <message>
        <source>Stopped.</source>
        <translation>Angehalten.</translation>
    </message>
    <message>
        <source>take {block} with its coats</source>
        <translation>{block} mit seinen Aufträgen nehmen</translation>
    </message>
    <message>
        <source>take suggested coats ({title})</source>
        <translation>vorgeschlagene Aufträge nehmen ({title})</translation>
    </message>
</context>
<context>
    <name>suggest dialog</name>
    <message>
        <source>Suggest coats</source>
        <translation>Aufträge vorschlagen</translation>
    </message>
    <message>
        <source>stop</source>
        <translation>anhalten</translation>
    </message>
    <message>
        <source>Stop the search</source>
        <translation>Suche anhalten</translation>
    </message>
    <message>
        <source>Plans and blocks</source>
        <translation>Pläne und Rohlinge</translation>
    </message>
    <message>
        <source>Suggested plans</source>
        <translation>Vorgeschlagene Pläne</translation>
    </message>
    <message>
        <source>Coats on {block}</source>
        <translation>Aufträge auf {block}</translation>
    </message>
    <message>
        <source>Blocks</source>
        <translation>Rohlinge</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Most jars</source>
        <translation>Höchstens so viele Näpfe</translation>
    </message>
    <message>
        <source>Liquids in stock</source>
        <translation>Vorhandene Flüssigkeiten</translation>
    </message>
    <message>
        <source>Search again</source>
        <translation>Neu suchen</translation>
    </message>
    <message>
        <source>At most</source>
        <translation>Höchstens</translation>
    </message>
    <message>
        <source>jars, of</source>
        <translation>Näpfe, aus</translation>
    </message>
    <message>
        <source>Locked coats stay (L in the table locks a cell).</source>
        <translation>Gesperrte Aufträge bleiben (L in der Tabelle sperrt eine Zelle).</translation>
    </message>
    <message>
        <source>all {count} liquids</source>
        <translation>allen {count} Flüssigkeiten</translation>
    </message>
    <message>
        <source>{count} of {all_} liquids</source>
        <translation>{count} von {all_} Flüssigkeiten</translation>
    </message>
    <message>
        <source>Plans side by side</source>
        <translation>Pläne nebeneinander</translation>
    </message>
    <message>
        <source>jars</source>
        <translation>Näpfe</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>why</source>
        <translation>warum</translation>
    </message>
    <message>
        <source>Take this plan</source>
        <translation>Diesen Plan nehmen</translation>
    </message>
    <message>
        <source>Take the plan: {title}</source>
        <translation>Plan nehmen: {title}</translation>
    </message>
    <message>
        <source>see both crowns</source>
        <translation>beide Kronen sehen</translation>
    </message>
    <message>
        <source>See the open plan beside: {title}</source>
        <translation>Den offenen Plan daneben sehen: {title}</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>{label}, wanted and predicted</source>
        <translation>{label}, Ziel und Vorhersage</translation>
    </message>
</context>
<context>
    <name>suggested plans</name>
    <message>
        <source>Suggested</source>
        <translation>Vorgeschlagen</translation>
    </message>
    <message>
        <source>suggested</source>
        <translation>vorgeschlagen</translation>
    </message>
    <message>
        <source>Three jars</source>
        <translation>Drei Näpfe</translation>
    </message>
    <message>
        <source>three jars</source>
        <translation>drei Näpfe</translation>
    </message>
    <message>
        <source>Closest there is</source>
        <translation>Am nächsten</translation>
    </message>
    <message>
        <source>closest there is</source>
        <translation>am nächsten</translation>
    </message>
    <message>
        <source>Other liquids</source>
        <translation>Andere Flüssigkeiten</translation>
    </message>
    <message>
        <source>other liquids</source>
        <translation>andere Flüssigkeiten</translation>
    </message>
    <message>
        <source>Nothing inside</source>
        <translation>Innen nichts</translation>
    </message>
    <message>
        <source>nothing inside</source>
        <translation>innen nichts</translation>
    </message>
</context>
<context>
    <name>tab table dialog</name>
    <message>
        <source>tab</source>
        <translation>Farbmuster</translation>
    </message>
    <message>
        <source>where from</source>
        <translation>woher</translation>
    </message>
    <message>
        <source>changed on this computer</source>
        <translation>an diesem Rechner geändert</translation>
    </message>
    <message>
        <source>L*a*b* under illuminant C, 2°, integrating sphere. These values were written down from memory of a published table and are not verified; correct any of them. Cases keep the values they were planned with.</source>
        <translation>L*a*b* unter Normlicht C, 2°, Ulbrichtkugel. Diese Werte wurden aus dem Gedächtnis nach einer veröffentlichten Tabelle notiert und sind nicht überprüft; berichtigen Sie sie. Fälle behalten die Werte, mit denen sie geplant wurden.</translation>
    </message>
    <message>
        <source>Table of tabs</source>
        <translation>Tabelle der Farbmuster</translation>
    </message>
    <message>
        <source>the shipped values again</source>
        <translation>wieder die mitgelieferten Werte</translation>
    </message>
    <message>
        <source>&apos;{text}&apos; is not a number.</source>
        <translation>„{text}“ ist keine Zahl.</translation>
    </message>
    <message>
        <source>Write it as 74.36.</source>
        <translation>Schreiben Sie sie als 74.36.</translation>
    </message>
</context>
<context>
    <name>teeth dialog</name>
    <message>
        <source>Tooth and roles</source>
        <translation>Zahn und Rollen</translation>
    </message>
    <message>
        <source>Numbers by ISO 3950, in the order of the units.
The crown is read again; corrections of zones made by hand are kept.</source>
        <translation>Nummern nach ISO 3950, in der Reihenfolge der Einheiten.
Die Krone wird neu gelesen; von Hand berichtigte Zonen bleiben.</translation>
    </message>
    <message>
        <source>Tooth numbers, ISO 3950</source>
        <translation>Zahnnummern nach ISO 3950</translation>
    </message>
    <message>
        <source>Read again</source>
        <translation>Neu lesen</translation>
    </message>
    <message>
        <source>Role of {number}</source>
        <translation>Rolle von {number}</translation>
    </message>
</context>
<context>
    <name>time</name>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Jan</source>
        <translation>Jan.</translation>
    </message>
    <message>
        <source>Feb</source>
        <translation>Feb.</translation>
    </message>
    <message>
        <source>Mar</source>
        <translation>März</translation>
    </message>
    <message>
        <source>Apr</source>
        <translation>Apr.</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>Jun</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>Jul</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>Aug</source>
        <translation>Aug.</translation>
    </message>
    <message>
        <source>Sep</source>
        <translation>Sept.</translation>
    </message>
    <message>
        <source>Oct</source>
        <translation>Okt.</translation>
    </message>
    <message>
        <source>Nov</source>
        <translation>Nov.</translation>
    </message>
    <message>
        <source>Dec</source>
        <translation>Dez.</translation>
    </message>
    <message>
        <source>{day:02d} {month} {clock}</source>
        <translation>{day}. {month} {clock}</translation>
    </message>
</context>
<context>
    <name>tray desk</name>
    <message>
        <source>Writing into the files of the cases…</source>
        <translation>Wird in die Dateien der Fälle geschrieben…</translation>
    </message>
    <message>
        <source>Reading the tray</source>
        <translation>Tablett wird gelesen</translation>
    </message>
    <message>
        <source>Measuring walls</source>
        <translation>Wände werden gemessen</translation>
    </message>
    <message>
        <source>nothing done</source>
        <translation>nichts getan</translation>
    </message>
    <message>
        <source>Marked as {what}: {count}.</source>
        <translation>Vermerkt als {what}: {count}.</translation>
    </message>
    <message>
        <source>state on the bench</source>
        <translation>Stand der Arbeit</translation>
    </message>
    <message>
        <source>Marking the state</source>
        <translation>Stand wird vermerkt</translation>
    </message>
    <message>
        <source>take off {cases}</source>
        <translation>{cases} herunternehmen</translation>
    </message>
    <message>
        <source>Add cases</source>
        <translation>Fälle hinzufügen</translation>
    </message>
    <message>
        <source>Cases (*{ending})</source>
        <translation>Fälle (*{ending})</translation>
    </message>
    <message>
        <source>add cases</source>
        <translation>Fälle hinzufügen</translation>
    </message>
    <message>
        <source>Open a tray</source>
        <translation>Tablett öffnen</translation>
    </message>
    <message>
        <source>Trays (*{ending})</source>
        <translation>Tabletts (*{ending})</translation>
    </message>
    <message>
        <source>open a tray</source>
        <translation>ein Tablett öffnen</translation>
    </message>
    <message>
        <source>Keep the tray</source>
        <translation>Tablett aufbewahren</translation>
    </message>
    <message>
        <source>Kept as {path}.</source>
        <translation>Aufbewahrt als {path}.</translation>
    </message>
    <message>
        <source>one case</source>
        <translation>ein Fall</translation>
    </message>
    <message>
        <source>{count} cases</source>
        <translation>{count} Fälle</translation>
    </message>
</context>
<context>
    <name>tray dialog</name>
    <message>
        <source>Reading the cases…</source>
        <translation>Fälle werden gelesen…</translation>
    </message>
    <message>
        <source>Nothing lies on the tray. Add cases, or open a tray that was kept.</source>
        <translation>Auf dem Tablett liegt nichts. Fügen Sie Fälle hinzu, oder öffnen Sie ein aufbewahrtes Tablett.</translation>
    </message>
    <message>
        <source>Tray</source>
        <translation>Tablett</translation>
    </message>
    <message>
        <source>Cases that are mixed for, painted and fired together. Jars of the same liquid and dye are put together; mixed jars are kept {hours:g} h at most.</source>
        <translation>Fälle, für die gemeinsam gemischt, aufgetragen und gebrannt wird. Näpfe gleicher Flüssigkeit und gleichen Farbstoffs werden zusammengelegt; gemischte Näpfe werden höchstens {hours:g} h aufbewahrt.</translation>
    </message>
    <message>
        <source>Jars mixed for the tray</source>
        <translation>Für das Tablett gemischte Näpfe</translation>
    </message>
    <message>
        <source>Remarks on the tray</source>
        <translation>Bemerkungen zum Tablett</translation>
    </message>
    <message>
        <source>Open in the window</source>
        <translation>Im Fenster öffnen</translation>
    </message>
    <message>
        <source>Set the state...</source>
        <translation>Stand setzen...</translation>
    </message>
    <message>
        <source>Take off</source>
        <translation>Herunternehmen</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Add cases...</source>
        <translation>Fälle hinzufügen...</translation>
    </message>
    <message>
        <source>Open a tray...</source>
        <translation>Tablett öffnen...</translation>
    </message>
    <message>
        <source>Keep this tray...</source>
        <translation>Dieses Tablett aufbewahren...</translation>
    </message>
    <message>
        <source>Sheets...</source>
        <translation>Blätter...</translation>
    </message>
    <message>
        <source>Coat maps, agreement pages and one mixing list: look at them, print or save them ({shortcut})</source>
        <translation>Auftragspläne, Einverständnisseiten und eine Mischliste: ansehen, drucken oder speichern ({shortcut})</translation>
    </message>
    <message>
        <source>{name} ({codes}) ready {ready}</source>
        <translation>{name} ({codes}) fertig {ready}</translation>
    </message>
    <message>
        <source>1 unit</source>
        <translation>1 Einheit</translation>
    </message>
    <message>
        <source>{units} units</source>
        <translation>{units} Einheiten</translation>
    </message>
    <message>
        <source>{units}. {stages}. If started now: {ready}.</source>
        <translation>{units}. {stages}. Bei Beginn jetzt: {ready}.</translation>
    </message>
    <message>
        <source>Nothing to look out for.</source>
        <translation>Nichts zu beachten.</translation>
    </message>
    <message>
        <source>Undo: {step}</source>
        <translation>Rückgängig: {step}</translation>
    </message>
    <message>
        <source>Nothing to undo on the tray</source>
        <translation>Auf dem Tablett ist nichts rückgängig zu machen</translation>
    </message>
    <message>
        <source>{unread} left out</source>
        <translation>{unread} ausgelassen</translation>
    </message>
    <message>
        <source>1 case: {told}.</source>
        <translation>1 Fall: {told}.</translation>
    </message>
    <message>
        <source>{count} cases: {told}.</source>
        <translation>{count} Fälle: {told}.</translation>
    </message>
</context>
<context>
    <name>tray units</name>
    <message>
        <source>state</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>case</source>
        <translation>Fall</translation>
    </message>
    <message>
        <source>units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>programme</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>{name} (open)</source>
        <translation>{name} (offen)</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>{state}; changed since</source>
        <translation>{state}; seither geändert</translation>
    </message>
    <message>
        <source>This case is left out; the remarks below say why. It stays on the tray.</source>
        <translation>Dieser Fall ist ausgelassen; die Bemerkungen unten sagen, warum. Er bleibt auf dem Tablett.</translation>
    </message>
    <message>
        <source>The plan was changed after this state was marked.</source>
        <translation>Der Plan wurde geändert, nachdem dieser Stand vermerkt wurde.</translation>
    </message>
    <message>
        <source>The plan is newer than revision {revision}, which was printed last: print the sheets again.</source>
        <translation>Der Plan ist neuer als Revision {revision}, die zuletzt gedruckt wurde: Drucken Sie die Blätter neu.</translation>
    </message>
    <message>
        <source>Cases on the tray</source>
        <translation>Fälle auf dem Tablett</translation>
    </message>
</context>
<context>
    <name>unit panel</name>
    <message>
        <source>Tooth number, ISO 3950</source>
        <translation>Zahnnummer, ISO 3950</translation>
    </message>
    <message>
        <source>Tooth number by ISO 3950</source>
        <translation>Zahnnummer nach ISO 3950</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Block</source>
        <translation>Rohling</translation>
    </message>
    <message>
        <source>Size of the mesh</source>
        <translation>Größe des Netzes</translation>
    </message>
    <message>
        <source>What lies behind</source>
        <translation>Was dahinter liegt</translation>
    </message>
    <message>
        <source>Cement</source>
        <translation>Zement</translation>
    </message>
    <message>
        <source>Sintering programme</source>
        <translation>Sinterprogramm</translation>
    </message>
    <message>
        <source>Mesh</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>Behind it</source>
        <translation>Dahinter</translation>
    </message>
    <message>
        <source>Furnace</source>
        <translation>Ofen</translation>
    </message>
    <message>
        <source>intake</source>
        <translation>Aufnahme</translation>
    </message>
    <message>
        <source>1 note</source>
        <translation>1 Bemerkung</translation>
    </message>
    <message>
        <source>{count} notes</source>
        <translation>{count} Bemerkungen</translation>
    </message>
    <message>
        <source>draft: intake</source>
        <translation>Entwurf: Aufnahme</translation>
    </message>
    <message>
        <source>Shade, stump, neighbours and wish, on one page</source>
        <translation>Farbe, Stumpf, Nachbarn und Wunsch auf einer Seite</translation>
    </message>
    <message>
        <source>Intake page</source>
        <translation>Aufnahmeseite</translation>
    </message>
    <message>
        <source>no crown yet</source>
        <translation>noch keine Krone</translation>
    </message>
    <message>
        <source>bridge of {count} units</source>
        <translation>Brücke aus {count} Einheiten</translation>
    </message>
</context>
<context>
    <name>unit values panel</name>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>wall mm</source>
        <translation>Wand mm</translation>
    </message>
    <message>
        <source>Mean of each unit&apos;s body; dL* from the unit above it.</source>
        <translation>Mittel über den Körper jeder Einheit; dL* zur Einheit darüber.</translation>
    </message>
    <message>
        <source>Value per unit</source>
        <translation>Helligkeit je Einheit</translation>
    </message>
    <message>
        <source>{number}: L* {lightness}, plus or minus {plus_minus}, wall {wall} mm</source>
        <translation>{number}: L* {lightness}, plus oder minus {plus_minus}, Wand {wall} mm</translation>
    </message>
    <message>
        <source>{unit}, {step} from the unit before it</source>
        <translation>{unit}, {step} zur Einheit davor</translation>
    </message>
    <message>
        <source>largest step {size:.1f} L*, {before} to {after}</source>
        <translation>größter Schritt {size:.1f} L*, {before} zu {after}</translation>
    </message>
    <message>
        <source>Value of each unit</source>
        <translation>Helligkeit jeder Einheit</translation>
    </message>
    <message>
        <source>value of each unit</source>
        <translation>Helligkeit jeder Einheit</translation>
    </message>
</context>
<context>
    <name>value ladder</name>
    <message>
        <source>Value ladder</source>
        <translation>Helligkeitsleiter</translation>
    </message>
    <message>
        <source>{area}, wanted {lightness:.1f}</source>
        <translation>{area}, Ziel {lightness:.1f}</translation>
    </message>
    <message>
        <source>beside it {tooth} L* {lightness:.1f}</source>
        <translation>daneben {tooth} L* {lightness:.1f}</translation>
    </message>
    <message>
        <source>beside</source>
        <translation>daneben</translation>
    </message>
    <message>
        <source>wanted</source>
        <translation>Ziel</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>Vorhersage</translation>
    </message>
</context>
<context>
    <name>wanted dialog</name>
    <message>
        <source>What is wanted</source>
        <translation>Was gewünscht ist</translation>
    </message>
    <message>
        <source>The body as seen in place; the other areas follow it.</source>
        <translation>Der Körper, wie im Mund gesehen; die anderen Flächen folgen ihm.</translation>
    </message>
    <message>
        <source>Name of the shade</source>
        <translation>Name der Farbe</translation>
    </message>
    <message>
        <source>name, for instance a shade designation</source>
        <translation>Name, etwa eine Farbbezeichnung</translation>
    </message>
    <message>
        <source>Shade</source>
        <translation>Farbe</translation>
    </message>
    <message>
        <source>body</source>
        <translation>Körper</translation>
    </message>
    <message>
        <source>body {axis}</source>
        <translation>Körper {axis}</translation>
    </message>
    <message>
        <source>The body&apos;s colour on this screen</source>
        <translation>Die Farbe des Körpers auf diesem Bildschirm</translation>
    </message>
    <message>
        <source>from the body</source>
        <translation>zum Körper</translation>
    </message>
    <message>
        <source>{name} lightness from body</source>
        <translation>{name}, Helligkeit zum Körper</translation>
    </message>
    <message>
        <source>{name} chroma from body</source>
        <translation>{name}, Chroma zum Körper</translation>
    </message>
    <message>
        <source>own shade {lab}</source>
        <translation>eigene Farbe {lab}</translation>
    </message>
    <message>
        <source>{name}: keep to its own shade</source>
        <translation>{name}: bei der eigenen Farbe bleiben</translation>
    </message>
    <message>
        <source>As it was read: {measurement}. Untick to follow the body.</source>
        <translation>Wie abgelesen: {measurement}. Abwählen, um dem Körper zu folgen.</translation>
    </message>
    <message>
        <source>Common practice; change any of them.</source>
        <translation>Übliche Praxis; ändern Sie nach Bedarf.</translation>
    </message>
    <message>
        <source>take the usual</source>
        <translation>die üblichen nehmen</translation>
    </message>
    <message>
        <source>keep as usual for {class_word}</source>
        <translation>als üblich behalten für {class_word}</translation>
    </message>
    <message>
        <source>intake page...</source>
        <translation>Aufnahmeseite...</translation>
    </message>
    <message>
        <source>Geometry of the reading</source>
        <translation>Geometrie der Messung</translation>
    </message>
    <message>
        <source>Light of the reading</source>
        <translation>Licht der Messung</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>{degrees}° observer</source>
        <translation>{degrees}°-Beobachter</translation>
    </message>
    <message>
        <source>convert by {ways}</source>
        <translation>umrechnen durch {ways}</translation>
    </message>
    <message>
        <source>Without it, no difference to a prediction at 45/0, D65 is shown.</source>
        <translation>Ohne sie wird kein Unterschied zu einer Vorhersage in 45/0, D65 gezeigt.</translation>
    </message>
</context>
<context>
    <name>warming</name>
    <message>
        <source>Getting ready</source>
        <translation>Wird vorbereitet</translation>
    </message>
</context>
<context>
    <name>what if dialog</name>
    <message>
        <source>Working it out…</source>
        <translation>Wird ausgerechnet…</translation>
    </message>
    <message>
        <source>A direction: what a programme does to scattering is assumed by its class until a blank coupon has been read.</source>
        <translation>Eine Richtung: Was ein Programm mit der Streuung macht, wird nach seiner Klasse angenommen, bis ein ungefärbtes Plättchen gemessen ist.</translation>
    </message>
    <message>
        <source>Compare furnaces</source>
        <translation>Öfen vergleichen</translation>
    </message>
    <message>
        <source>The same plan, sintered “{here}” as planned, and in another programme.</source>
        <translation>Derselbe Plan, gesintert in „{here}“ wie geplant und in einem anderen Programm.</translation>
    </message>
    <message>
        <source>Other programme</source>
        <translation>Anderes Programm</translation>
    </message>
    <message>
        <source>planned | other</source>
        <translation>geplant | anders</translation>
    </message>
    <message>
        <source>Show both crowns</source>
        <translation>Beide Kronen zeigen</translation>
    </message>
    <message>
        <source>The materials have no other programme.</source>
        <translation>Die Materialien haben kein anderes Programm.</translation>
    </message>
    <message>
        <source>{label} in both programmes</source>
        <translation>{label} in beiden Programmen</translation>
    </message>
    <message>
        <source>time, cold to opening</source>
        <translation>Zeit, kalt bis zum Öffnen</translation>
    </message>
    <message>
        <source>class by time</source>
        <translation>Klasse nach Zeit</translation>
    </message>
    <message>
        <source>TP of a bare plate of 1.0 mm</source>
        <translation>TP einer bloßen Platte von 1.0 mm</translation>
    </message>
    <message>
        <source>strength class</source>
        <translation>Festigkeitsklasse</translation>
    </message>
    <message>
        <source>class {number}</source>
        <translation>Klasse {number}</translation>
    </message>
</context>
<context>
    <name>words</name>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>{first} or {last}</source>
        <translation>{first} oder {last}</translation>
    </message>
</context>
<context>
    <name>zone sliders</name>
    <message>
        <source>What was painted by hand stays.</source>
        <translation>Von Hand Gemaltes bleibt.</translation>
    </message>
    <message>
        <source>{name}, per cent {of_what}</source>
        <translation>{name}, Prozent {of_what}</translation>
    </message>
    <message>
        <source>How far the zones reach</source>
        <translation>Wie weit die Zonen reichen</translation>
    </message>
    <message>
        <source>Zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>Back to how far the zones usually reach</source>
        <translation>Zurück zu den üblichen Zonengrenzen</translation>
    </message>
    <message>
        <source>neck climbs</source>
        <translation>Zahnhals steigt</translation>
    </message>
    <message>
        <source>of the wall</source>
        <translation>der Wand</translation>
    </message>
    <message>
        <source>cusps come down</source>
        <translation>Höcker kommen herab</translation>
    </message>
    <message>
        <source>fissures are wide</source>
        <translation>Fissuren sind breit</translation>
    </message>
    <message>
        <source>of their valleys</source>
        <translation>ihrer Täler</translation>
    </message>
    <message>
        <source>incisal edge comes down</source>
        <translation>Schneide kommt herab</translation>
    </message>
</context>
<context>
    <name>zone sliders desk</name>
    <message>
        <source>how far they reach...</source>
        <translation>wie weit sie reichen...</translation>
    </message>
    <message>
        <source>Sliders: how high the neck climbs, how far the cusps come down</source>
        <translation>Regler: wie hoch der Zahnhals steigt, wie weit die Höcker herabkommen</translation>
    </message>
    <message>
        <source>finding grooves, ridges and walls</source>
        <translation>Furchen, Leisten und Wände werden gesucht</translation>
    </message>
    <message>
        <source>Finding landmarks</source>
        <translation>Formmerkmale werden gesucht</translation>
    </message>
    <message>
        <source>Moving borders</source>
        <translation>Grenzen werden verschoben</translation>
    </message>
    <message>
        <source>let the neck climb {share:.0%}</source>
        <translation>den Zahnhals um {share:.0%} steigen lassen</translation>
    </message>
    <message>
        <source>let the cusps come down {share:.0%}</source>
        <translation>die Höcker um {share:.0%} herabkommen lassen</translation>
    </message>
    <message>
        <source>make fissures {share:.0%} wide</source>
        <translation>Fissuren {share:.0%} breit machen</translation>
    </message>
</context>
<context>
    <name>zone tool desk</name>
    <message>
        <source>Brush: left drag paints, Esc takes the stroke back</source>
        <translation>Pinsel: links ziehen malt, Esc nimmt den Strich zurück</translation>
    </message>
    <message>
        <source>Eraser: left drag gives back or takes away, Esc takes the stroke back</source>
        <translation>Radierer: links ziehen gibt zurück oder nimmt weg, Esc nimmt den Strich zurück</translation>
    </message>
    <message>
        <source>Fill: click a place, and it is filled up to the creases around it. Esc: brush</source>
        <translation>Füllen: auf eine Stelle klicken, sie wird bis zu den Furchen ringsum gefüllt. Esc: Pinsel</translation>
    </message>
    <message>
        <source>Line: click where it starts, then where it ends. Esc: brush</source>
        <translation>Linie: auf den Anfang, dann auf das Ende klicken. Esc: Pinsel</translation>
    </message>
    <message>
        <source>Looking for creases</source>
        <translation>Furchen werden gesucht</translation>
    </message>
    <message>
        <source>One moment: looking for the creases of this crown</source>
        <translation>Einen Moment: Die Furchen dieser Krone werden gesucht</translation>
    </message>
    <message>
        <source>Line: now click where it ends. Esc: start again</source>
        <translation>Linie: jetzt auf das Ende klicken. Esc: neu beginnen</translation>
    </message>
    <message>
        <source>No way along the surface leads there: choose another end</source>
        <translation>Dorthin führt kein Weg auf der Oberfläche: Wählen Sie ein anderes Ende</translation>
    </message>
    <message>
        <source>Nothing changes there: it already is as the tool would make it</source>
        <translation>Dort ändert sich nichts: Es ist schon so, wie das Werkzeug es machen würde</translation>
    </message>
    <message>
        <source>grow {name} by {by_mm:g} mm</source>
        <translation>{name} um {by_mm:g} mm vergrößern</translation>
    </message>
    <message>
        <source>shrink {name} by {by_mm:g} mm</source>
        <translation>{name} um {by_mm:g} mm verkleinern</translation>
    </message>
    <message>
        <source>smooth the edge of {name}</source>
        <translation>den Rand von {name} glätten</translation>
    </message>
    <message>
        <source>{step}: done</source>
        <translation>{step}: erledigt</translation>
    </message>
    <message>
        <source>{step}: nothing to change</source>
        <translation>{step}: nichts zu ändern</translation>
    </message>
    <message>
        <source>What was corrected by hand: {half} to {other}</source>
        <translation>Von Hand Berichtigtes: {half} nach {other}</translation>
    </message>
    <message>
        <source>mirror corrections, {half} to {other}</source>
        <translation>Berichtigungen spiegeln, {half} nach {other}</translation>
    </message>
    <message>
        <source>The chosen area, {name}: {half} to {other}</source>
        <translation>Die gewählte Fläche, {name}: {half} nach {other}</translation>
    </message>
    <message>
        <source>mirror {name}, {half} to {other}</source>
        <translation>{name} spiegeln, {half} nach {other}</translation>
    </message>
    <message>
        <source>The chosen area, {name}</source>
        <translation>Die gewählte Fläche, {name}</translation>
    </message>
    <message>
        <source>reset {name} to the proposal</source>
        <translation>{name} auf den Vorschlag zurücksetzen</translation>
    </message>
    <message>
        <source>All zones and accents</source>
        <translation>Alle Zonen und Akzente</translation>
    </message>
    <message>
        <source>reset all areas to the proposal</source>
        <translation>alle Flächen auf den Vorschlag zurücksetzen</translation>
    </message>
    <message>
        <source>Streaks carry the coat of a step: add a step to the plan first</source>
        <translation>Streifen tragen den Auftrag eines Schritts weiter: Fügen Sie dem Plan zuerst einen Schritt hinzu</translation>
    </message>
    <message>
        <source>change streaks</source>
        <translation>Streifen ändern</translation>
    </message>
</context>
</TS>
