using PdfSharp.Drawing;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Drawings;

/// <summary>Supply against demand by month, the state of charge through the worst 30 days simulated, and battery against array at equal reliability.</summary>
internal static class EnergyPicture
{
    public const double HeightPt = 116;

    private const double MarginPt = 26;
    private const double GapPt = 14;
    private const double PlotPt = 84;
    private const double TopPt = 16;

    /// <summary>Shares of the width of the three panels, gaps left out: months, worst days, curve.</summary>
    private static readonly double[] Shares = [0.30, 0.37, 0.33];

    /// <summary>Three panels; two without a curve.</summary>
    public static void Draw(XGraphics g, XRect area, EnergyResult energy, KitCurve? curve)
    {
        var panels = curve is { Points.Length: > 1 } ? 3 : 2;
        var wide = area.Width - ((panels - 1) * GapPt);
        var shares = Shares.Take(panels).ToArray();
        var left = area.Left;
        for (var i = 0; i < panels; i++)
        {
            var width = wide * shares[i] / shares.Sum();
            var plot = new XRect(left + MarginPt, area.Top + TopPt, width - MarginPt - (i == 2 ? 6 : 0), PlotPt);
            if (i == 0) DrawMonths(g, plot, energy);
            else if (i == 1) DrawStates(g, plot, energy.WorstSpell);
            else EqualReliabilityPicture.Draw(g, plot, curve!);
            left += width + GapPt;
        }
    }

    private static void DrawMonths(XGraphics g, XRect area, EnergyResult energy)
    {
        var top = Math.Max(energy.MonthlySupplyWhPerDay.Max(), energy.MonthlyDemandWhPerDay.Max());
        var step = Pencil.NiceStep(top, 4);
        var axes = new Axes(area, 0, 12, 0, Math.Max(step, Math.Ceiling(top / step) * step));
        Pencil.Text(g, "Supply (line), demand (bars), Wh a day", Pencil.StrongLabel, area.Left - MarginPt, area.Top - 11);
        axes.DrawLevels(g, step, v => Figures.Number(v, 0));
        for (var m = 0; m < 12; m++) DrawMonth(g, axes, m, energy);
        DrawSupply(g, axes, energy);
    }

    private static void DrawMonth(XGraphics g, Axes axes, int month, EnergyResult energy)
    {
        var demandTop = axes.Y(energy.MonthlyDemandWhPerDay[month]);
        g.DrawRectangle(Ink.Pen(Ink.HairPt, Ink.Dark), Ink.Fill(Ink.Light), axes.X(month + 0.25), demandTop, axes.X(0.5) - axes.X(0),
            axes.Area.Bottom - demandTop);
        Pencil.Text(g, Figures.MonthShort(month + 1)[..1], Pencil.QuietLabel, axes.X(month + 0.5), axes.Area.Bottom + 8, Anchor.Middle);
    }

    private static void DrawSupply(XGraphics g, Axes axes, EnergyResult energy)
    {
        var points = energy.MonthlySupplyWhPerDay.Select((wh, m) => axes.At(m + 0.5, wh)).ToArray();
        g.DrawLines(Ink.Pen(Ink.FirmPt), points);
        foreach (var p in points) g.DrawEllipse(Ink.Pen(Ink.FirmPt), Ink.Fill(1), p.X - 2, p.Y - 2, 4, 4);
    }

    private static void DrawStates(XGraphics g, XRect area, WorstSpell spell)
    {
        var axes = new Axes(area, 0, WorstSpell.DayCount * 24, 0, 1);
        Pencil.Text(g, $"Charge, %, worst {Figures.Number(WorstSpell.DayCount, 0)} days: from {YearDay.Text(spell.FirstDayOfYear)}, year {Figures.Number(spell.Year, 0)}", Pencil.StrongLabel, area.Left - MarginPt, area.Top - 11);
        axes.DrawLevels(g, 0.25, v => Figures.Number(v * 100, 0));
        for (var day = 5; day <= WorstSpell.DayCount; day += 5)
        {
            Pencil.Text(g, Figures.Number(day, 0), Pencil.QuietLabel, axes.X((day - 0.5) * 24), area.Bottom + 8, Anchor.Middle);
        }

        Pencil.Text(g, "day", Pencil.QuietLabel, area.Left, area.Bottom + 8);
        if (spell.States.IsEmpty) return;
        DrawSteps(g, axes, spell.ReconnectByDay, Ink.Dashed(Ink.HairPt, Ink.Dark, 1, 2));
        DrawSteps(g, axes, spell.DisconnectByDay, Ink.Dashed(Ink.ThinPt, Ink.Black, 3, 2));
        XPoint[] curve = [.. spell.States.Select((s, h) => axes.At(h + 1, s))];
        g.DrawLines(Ink.Pen(0.7), curve);
        var disconnect = $"disconnect {Range(spell.DisconnectByDay)} %";
        var place = FreePlace.Of(DisconnectPlaces(area, axes.Y(spell.DisconnectByDay.Min()), disconnect), curve);
        WriteIn(g, place, disconnect);
        DrawReconnect(g, axes, spell, curve, place);
        DrawLowest(g, axes, curve, spell.States.Min(), place);
    }

    /// <summary>A level that holds for a day at a time.</summary>
    private static void DrawSteps(XGraphics g, Axes axes, IReadOnlyList<double> byDay, XPen pen) =>
        g.DrawLines(pen, [.. byDay.SelectMany((level, day) => new[] { axes.At(day * 24, level), axes.At((day + 1) * 24, level) })]);

    private static string Range(IReadOnlyList<double> fractions)
    {
        var (low, high) = (Figures.Number(fractions.Min() * 100, 0), Figures.Number(fractions.Max() * 100, 0));
        return low == high ? low : $"{low} to {high}";
    }

    private static void DrawReconnect(XGraphics g, Axes axes, WorstSpell spell, XPoint[] curve, XRect taken)
    {
        if (spell.ReconnectByDay.Zip(spell.DisconnectByDay).All(p => p.First - p.Second < 0.03)) return;
        var text = $"reconnect {Range(spell.ReconnectByDay)} %";
        WriteIn(g, FreePlace.Of(DisconnectPlaces(axes.Area, axes.Y(spell.ReconnectByDay.Max()) - 10.4, text), curve, taken), text);
    }

    /// <summary>Below the line of the disconnect, where a curve seldom comes, from the right end on; then above it.</summary>
    private static XRect[] DisconnectPlaces(XRect area, double y, string text)
    {
        var half = (Pencil.Label.Width(text) / 2) + 2;
        double[] along = [area.Right - half, area.Left + half, .. Enumerable.Range(1, 7).Select(i => area.Left + half + ((area.Width - (2 * half)) * i / 8))];
        double[] across = area.Bottom - y >= 9 ? [y + 5.2, y - 5.2] : [y - 5.2, y - 12];
        return [.. across.SelectMany(_ => along, (at, x) => FreePlace.Box(text, Pencil.Label, x, at))];
    }

    private static void DrawLowest(XGraphics g, Axes axes, XPoint[] curve, double lowest, XRect taken)
    {
        var at = curve.MaxBy(p => p.Y);
        var text = $"lowest {Figures.Number(lowest * 100, 0)} %";
        var half = (Pencil.Label.Width(text) / 2) + 5;
        XRect[] places =
        [
            .. from y in new[] { at.Y + 7, at.Y - 7, at.Y, at.Y - 14 }
               from x in new[] { at.X + half, at.X - half }
               where x - half >= axes.Area.Left && x + half <= axes.Area.Right + 8 && y + 4 <= axes.Area.Bottom
               select FreePlace.Box(text, Pencil.Label, x, y),
        ];
        if (places.Length > 0) WriteIn(g, FreePlace.Of(places, curve, taken), text);
        g.DrawEllipse(Ink.Pen(Ink.FirmPt), Ink.Fill(1), at.X - 2, at.Y - 2, 4, 4);
    }

    private static void WriteIn(XGraphics g, XRect place, string text) =>
        Pencil.Text(g, text, Pencil.Label, place.Left + (place.Width / 2), place.Top + (place.Height / 2), Anchor.Middle, whiteGround: true);
}
