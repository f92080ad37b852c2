using PdfSharp.Drawing;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Drawings;

/// <summary>Which part is connected to which, with cable, fuse and the order of connection.</summary>
internal sealed class ConnectionDiagram(PoleParts parts)
{
    public const double WidthPt = 203;

    private const double ColumnPt = 28;
    private const double BoxWidthPt = 80;
    private const double BoxHeightPt = 32;

    public void Draw(XGraphics g, XRect area)
    {
        if (parts.Integrated is { } unit)
        {
            DrawSealed(g, area, unit);
            return;
        }

        var module = Box(area, ColumnPt, 0);
        var controller = Box(area, ColumnPt, 82);
        var battery = Box(area, ColumnPt, 146);
        var lamp = Box(area, area.Width - BoxWidthPt, 0);
        DrawEnclosure(g, controller, battery);
        Down(g, module, controller, Find("module", "array", "panel"), 4, (module.Bottom + controller.Top) / 2 - 12);
        Down(g, controller, battery, Find("battery"), 2, (controller.Bottom + battery.Top) / 2);
        Up(g, controller, lamp, Find("lumin", "lamp"), 5);
        DrawPart(g, module, Counted(parts.ModuleCount, "Module", "Modules"), parts.Module.Code, Series(parts.ModuleCount, parts.ModulesInSeries));
        DrawPart(g, controller, Counted(parts.ControllerCount, "Controller", "Controllers"), parts.Controller.Code, parts.ControllerCount > 1 ? "side by side" : "");
        DrawPart(g, lamp, "Luminaire", parts.Luminaire.Code, "");
        DrawPart(g, battery, Counted(parts.BatteryCount, "Battery", "Batteries"), parts.Battery.Code, Series(parts.BatteryCount, parts.BatteriesInSeries));
        Order(g, controller.Right - 9, controller.Top + 9, 3);
        DrawEarth(g, module, battery.Top - 8, lamp.Left + 1);
    }

    /// <summary>One sealed unit: nothing is connected on site but the earth.</summary>
    private void DrawSealed(XGraphics g, XRect area, IntegratedUnit unit)
    {
        var box = new XRect(area.Left + ColumnPt, area.Top + 10, area.Width - ColumnPt, 62);
        g.DrawRectangle(Ink.Pen(Ink.FirmPt), Ink.Fill(1), box);
        Pencil.Text(g, "Integrated unit " + unit.Code + ", sealed", Pencil.StrongLabel, box.Left + 6, box.Top + 10);
        string[] inside =
        [
            $"lamp {Figures.Short(unit.InputPowerW)} W, module {Figures.Short(unit.RatedWp)} Wp", $"battery {Figures.Short(unit.NominalVoltageV)} V, {Figures.Short(unit.RatedWh)} Wh",
            "controller; connected by the maker", "no cable runs down the shaft",
        ];
        for (var i = 0; i < inside.Length; i++) Pencil.Text(g, inside[i], Pencil.Label, box.Left + 6, box.Top + 22 + (10 * i));
        Order(g, box.Right - 9, box.Top + 10, 3);
        DrawEarth(g, new XRect(box.Left, box.Top, box.Width, BoxHeightPt), area.Top + 96, box.Left + 14);
    }

    private static XRect Box(XRect area, double x, double y) => new(area.Left + x, area.Top + y, BoxWidthPt, BoxHeightPt);

    private static string Counted(int count, string one, string many) => count == 1 ? one : $"{count} {many.ToLowerInvariant()}";

    private static string Series(int count, int inSeries) => (count, inSeries) switch
    {
        (1, _) => "",
        (_, 1) => "in parallel",
        _ when inSeries == count => "in series",
        _ => $"{count / inSeries} strings of {inSeries}",
    };

    private Circuit? Find(params string[] words) => parts.Circuits.FirstOrDefault(c => words.Any(w => c.Name.Contains(w, StringComparison.OrdinalIgnoreCase)));

    private static void DrawPart(XGraphics g, XRect box, string name, string code, string remark)
    {
        g.DrawRectangle(Ink.Pen(Ink.FirmPt), Ink.Fill(1), box);
        Pencil.Text(g, name, Pencil.StrongLabel, box.Left + 6, box.Top + 9);
        Pencil.Text(g, code, Pencil.Label, box.Left + 6, box.Top + 19);
        Pencil.Text(g, remark, Pencil.QuietLabel, box.Left + 6, box.Top + 28);
    }

    private static void DrawEnclosure(XGraphics g, XRect controller, XRect battery)
    {
        var outline = new XRect(controller.Left - 8, controller.Top - 6, BoxWidthPt + 16, battery.Bottom - controller.Top + 18);
        g.DrawRectangle(Ink.Dashed(Ink.ThinPt, Ink.Mid, 3, 2), outline);
        Pencil.Text(g, "enclosure", Pencil.QuietLabel, controller.Left - 4, battery.Bottom + 7);
    }

    private static void Down(XGraphics g, XRect from, XRect to, Circuit? circuit, int order, double textY)
    {
        var x = from.Left + 16;
        g.DrawLine(Ink.Pen(Ink.FirmPt), x, from.Bottom, x, to.Top);
        Order(g, x - 12, textY, order);
        if (circuit is null) return;
        Pencil.Text(g, Cable(circuit), Pencil.Label, x + 8, textY - 5, whiteGround: true);
        if (circuit.Fuse is { } fuse) Fuse(g, x, textY, fuse, x + 8, textY + 5, Anchor.Start);
    }

    /// <summary>From the right of one box to the foot of another, above and to the right of it.</summary>
    private static void Up(XGraphics g, XRect from, XRect to, Circuit? circuit, int order)
    {
        var (x, y) = (to.Right - 18, from.Top + (BoxHeightPt / 2));
        g.DrawLines(Ink.Pen(Ink.FirmPt), [new XPoint(from.Right, y), new XPoint(x, y), new XPoint(x, to.Bottom)]);
        Order(g, x + 12, y - 36, order);
        if (circuit is null) return;
        Pencil.Text(g, Cable(circuit), Pencil.Label, x - 8, y - 41, Anchor.End);
        if (circuit.Fuse is { } fuse) Fuse(g, x, y - 36, fuse, x - 8, y - 31, Anchor.End);
    }

    private static string Cable(Circuit circuit) => $"{Figures.Short(circuit.Cable.Cores)} × {Figures.Short(circuit.Cable.CrossSectionMm2)} mm², "
        + $"{Figures.Number(circuit.LengthM, 1)} m";

    private static void Fuse(XGraphics g, double x, double y, ProtectionDevice fuse, double textX, double textY, Anchor anchor)
    {
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), Ink.Fill(1), x - 2.5, y - 7, 5, 14);
        g.DrawLine(Ink.Pen(Ink.HairPt), x, y - 7, x, y + 7);
        Pencil.Text(g, $"fuse {Figures.Short(fuse.RatedA)} A, {Figures.Short(fuse.RatedV)} V DC", Pencil.Label, textX, textY, anchor, whiteGround: true);
    }

    private static void Order(XGraphics g, double x, double y, int number)
    {
        g.DrawEllipse(Ink.Fill(Ink.Black), x - 5.5, y - 5.5, 11, 11);
        var white = Pencil.StrongLabel with { Grey = 1 };
        Pencil.Text(g, Figures.Number(number, 0), white, x, y, Anchor.Middle);
    }

    private void DrawEarth(XGraphics g, XRect module, double bottom, double textX)
    {
        var x = module.Left - 18;
        var middle = module.Top + (BoxHeightPt / 2);
        g.DrawLines(Ink.Pen(Ink.ThinPt), [new XPoint(module.Left, middle), new XPoint(x, middle), new XPoint(x, bottom)]);
        for (var i = 0; i < 3; i++) g.DrawLine(Ink.Pen(Ink.FirmPt), x - 9 + (3 * i), bottom + (3 * i), x + 9 - (3 * i), bottom + (3 * i));
        Order(g, x, module.Bottom + 28, 1);
        List<string> notes = parts.Integrated is null ? ["1: pole, bracket and", "module frame to earth"] : ["1: pole and head of the unit to earth"];
        notes.AddRange(parts.OtherProtection.Where(p => p.Kind == ProtectionKind.EarthElectrode).Take(1).Select(p => "electrode " + p.Code));
        notes.AddRange(parts.OtherProtection.Where(p => p.Kind == ProtectionKind.SurgeArrester).Take(1)
            .SelectMany(p => new[] { "surge arrester at", "the controller: " + p.Code }));
        for (var i = 0; i < notes.Count; i++) Pencil.Text(g, notes[i], Pencil.Label, textX, bottom - 6 + (9 * i));
    }
}
