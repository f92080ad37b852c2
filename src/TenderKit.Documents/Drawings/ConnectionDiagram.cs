using PdfSharp.Drawing;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Drawings;

/// <summary>Which part is connected to which, with cable, fuse and the order of connection.</summary>
internal sealed class ConnectionDiagram(PoleParts parts)
{
    public const double HeightPt = 168;

    private const double BoxWidthPt = 96;
    private const double BoxHeightPt = 36;

    public void Draw(XGraphics g, XRect area)
    {
        var module = Box(area, 0, 14);
        var controller = Box(area, (area.Width - BoxWidthPt) / 2, 14);
        var lamp = Box(area, area.Width - BoxWidthPt, 14);
        var battery = Box(area, (area.Width - BoxWidthPt) / 2, 118);
        DrawEnclosure(g, controller, battery);
        Across(g, module, controller, Find("module", "array", "panel"), 3);
        Across(g, controller, lamp, Find("lumin", "lamp"), 4);
        Down(g, controller, battery, Find("battery"), 2);
        DrawPart(g, module, Counted(parts.ModuleCount, "Module", "Modules"), parts.Module.Code, Series(parts.ModuleCount, parts.ModulesInSeries));
        DrawPart(g, controller, "Controller", parts.Controller.Code, "");
        DrawPart(g, lamp, "Luminaire", parts.Luminaire.Code, "");
        DrawPart(g, battery, Counted(parts.BatteryCount, "Battery", "Batteries"), parts.Battery.Code, Series(parts.BatteryCount, parts.BatteriesInSeries));
        DrawEarth(g, new XPoint(module.Left + 28, module.Bottom));
    }

    private static XRect Box(XRect area, double x, double y) => new(area.Left + x, area.Top + y, BoxWidthPt, BoxHeightPt);

    private static string Counted(int count, string one, string many) => count == 1 ? one : $"{count} {many.ToLowerInvariant()}";

    private static string Series(int count, int inSeries) => count > 1 ? $"{inSeries} in series" : "";

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
        var outline = new XRect(controller.Left - 10, controller.Top - 12, BoxWidthPt + 20, battery.Bottom - controller.Top + 22);
        g.DrawRectangle(Ink.Dashed(Ink.ThinPt, Ink.Mid, 3, 2), outline);
        Pencil.Text(g, "enclosure", Pencil.QuietLabel, controller.Left - 7, battery.Bottom + 5.5);
    }

    private static void Across(XGraphics g, XRect from, XRect to, Circuit? circuit, int order)
    {
        var y = from.Top + (BoxHeightPt / 2);
        var middle = (from.Right + to.Left) / 2;
        g.DrawLine(Ink.Pen(Ink.FirmPt), from.Right, y, to.Left, y);
        Order(g, middle, y - 16, order);
        if (circuit is null) return;
        Pencil.Text(g, Cable(circuit), Pencil.Label, middle, y + (circuit.Fuse is null ? 7 : 9), Anchor.Middle);
        if (circuit.Fuse is { } fuse) Fuse(g, middle, y, upright: false, fuse, middle, y + 18, Anchor.Middle);
    }

    private static void Down(XGraphics g, XRect from, XRect to, Circuit? circuit, int order)
    {
        var x = from.Left + (BoxWidthPt / 2);
        var middle = (from.Bottom + to.Top) / 2;
        g.DrawLine(Ink.Pen(Ink.FirmPt), x, from.Bottom, x, to.Top);
        Order(g, x - 14, middle, order);
        if (circuit is null) return;
        Pencil.Text(g, Cable(circuit), Pencil.Label, x + 66, middle - 5);
        if (circuit.Fuse is { } fuse) Fuse(g, x, middle, upright: true, fuse, x + 66, middle + 5, Anchor.Start);
    }

    private static string Cable(Circuit circuit) => $"{Figures.Short(circuit.Cable.Cores)} × {Figures.Short(circuit.Cable.CrossSectionMm2)} mm², "
        + $"{Figures.Number(circuit.LengthM, 1)} m";

    private static void Fuse(XGraphics g, double x, double y, bool upright, ProtectionDevice fuse, double textX, double textY, Anchor anchor)
    {
        var (w, h) = upright ? (5.0, 14.0) : (14.0, 5.0);
        g.DrawRectangle(Ink.Pen(Ink.ThinPt), Ink.Fill(1), x - (w / 2), y - (h / 2), w, h);
        g.DrawLine(Ink.Pen(Ink.HairPt), x - (upright ? 0 : w / 2), y - (upright ? h / 2 : 0), x + (upright ? 0 : w / 2), y + (upright ? h / 2 : 0));
        Pencil.Text(g, $"fuse {Figures.Short(fuse.RatedA)} A, {Figures.Short(fuse.RatedV)} V DC", Pencil.Label, textX, textY, anchor);
    }

    private static void Order(XGraphics g, double x, double y, int number)
    {
        g.DrawEllipse(Ink.Fill(Ink.Black), x - 5.5, y - 5.5, 11, 11);
        var white = Pencil.StrongLabel with { Grey = 1 };
        Pencil.Text(g, Figures.Number(number, 0), white, x, y, Anchor.Middle);
    }

    private void DrawEarth(XGraphics g, XPoint from)
    {
        var bottom = from.Y + 54;
        g.DrawLine(Ink.Pen(Ink.ThinPt), from.X, from.Y, from.X, bottom);
        for (var i = 0; i < 3; i++) g.DrawLine(Ink.Pen(Ink.FirmPt), from.X - 9 + (3 * i), bottom + (3 * i), from.X + 9 - (3 * i), bottom + (3 * i));
        Order(g, from.X - 16, bottom - 20, 1);
        var surge = parts.OtherProtection.FirstOrDefault(p => p.Kind == ProtectionKind.SurgeArrester);
        var rod = parts.OtherProtection.FirstOrDefault(p => p.Kind == ProtectionKind.EarthElectrode);
        Pencil.Text(g, "pole, bracket, module frame to earth" + (rod is null ? "" : ": " + rod.Code), Pencil.Label, from.X - 28, bottom + 18);
        if (surge is not null) Pencil.Text(g, "surge arrester at the controller: " + surge.Code, Pencil.Label, from.X - 28, bottom + 28);
    }
}
