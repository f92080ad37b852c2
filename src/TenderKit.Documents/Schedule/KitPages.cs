using PdfSharp.Drawing;
using TenderKit.Documents.Drawings;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Sites;

namespace TenderKit.Documents.Schedule;

/// <summary>The pages of one kit.</summary>
internal static class KitPages
{
    /// <summary>All kits in one table.</summary>
    public static TableBlock Overview(TenderDesign design) => new(
        "Kits in short, each figure for one pole; margins are the least of all sites of the kit, % of what is required",
        [
            new("Kit", FixedPt: 22), new("Sites"), Number("Poles", "", 33), Number("Pole", "m", 28), Number("Luminaire", "W", 48), Number("Modules", "Wp", 44),
            Number("Battery", "Wh", 40), Number("System", "V", 40), Number("Margin", "light", 40), Number("Margin", "energy", 40), Number("Margin", "structure", 44),
        ],
        [.. design.Kits.Select(k => OverviewRow(design, k))]);

    /// <summary>The pages of one kit, beginning on a page of their own: what it is, how it performs, what it was checked against.</summary>
    public static IEnumerable<Block> Of(TenderDesign design, Kit kit)
    {
        yield return new Heading(2, $"Kit {kit.Id}");
        yield return new Paragraph(Opening(kit) + (ProvisionalWords.Holds(design, kit) ? " The number of poles is provisional until every site is surveyed." : ""));
        yield return MakeUpTable.Of(kit);
        foreach (var block in Drawings(Governing.OfStructure(design, kit), kit)) yield return block;
        foreach (var block in Light(Governing.OfLight(design, kit), kit)) yield return block;
        foreach (var block in Energy(Governing.OfEnergy(design, kit), kit, design.Curves.FirstOrDefault(c => c.KitId == kit.Id))) yield return block;
        yield return EnergyTables.HandBesideSimulation(Governing.OfEnergy(design, kit));
        yield return ComplianceTable.Of(design, kit);
        if (EvidenceText.Any(kit.Parts)) yield return new Paragraph(EvidenceText.Files(kit.Parts), TextStyle.Small);
    }

    private static Row OverviewRow(TenderDesign design, Kit kit)
    {
        var p = kit.Parts;
        return Row.Of(
            kit.Id, Words.List(kit.SiteIds, 8), Figures.Number(kit.Poles, 0) + (ProvisionalWords.Holds(design, kit) ? ProvisionalWords.Sign : ""), Figures.Short(p.Pole.HeightM), Figures.Short(p.Luminaire.InputPowerW),
            Figures.Short(p.ArrayWp), Figures.Short(p.BatteryRatedWh), Figures.Short(p.SystemVoltageV), Least(kit, Governing.LightChecks),
            Least(kit, Governing.EnergyChecks), Least(kit, Governing.StructureChecks));
    }

    private static string Least(Kit kit, string[] prefixes) =>
        kit.Checks.Where(c => CheckText.IsMeasured(c) && Governing.Concerns(c, prefixes)).Min(c => c.MarginFraction) is { } margin
            ? Figures.Number(margin * 100, 0).Replace('-', '−') : "–";

    private static Column Number(string head, string unit, double widthPt) => new(head, unit, 1, Side.End, widthPt);

    private static string Opening(Kit kit) =>
        $"{Figures.Count(kit.Poles, "pole", "poles")} at {Figures.Count(kit.SiteIds.Length, "site", "sites")}: {Words.List(kit.SiteIds, 14)}. "
        + $"{Figures.Short(kit.Parts.SystemVoltageV)} V system, {Figures.Short(kit.Parts.ArrayWp)} Wp of modules, {Figures.Short(kit.Parts.BatteryRatedWh)} Wh "
            + "of battery on each pole.";

    private static IEnumerable<Block> Light(SiteDesign site, Kit kit)
    {
        yield return new Heading(3, $"Light, kit {kit.Id}");
        var layout = site.Light.Layout is { } road
            ? $"{Words.Of(road.Arrangement)}, spacing {Figures.Number(road.SpacingM, 1)} m, mounting height {Figures.Number(road.MountingHeightM, 2)} m, "
                + $"overhang {Figures.Number(road.OverhangM, 2)} m, tilt {Figures.Short(road.TiltDegrees)}°"
            : site.Light is { Area: { } drawn, Yard: { } upright }
                ? $"{Figures.Count(drawn.Luminaires.Length, "pole", "poles")} on the area as drawn, {Figures.Number(drawn.Area.AreaM2, 0)} m², mounting height "
                    + $"{Figures.Number(upright.MountingHeightM, 2)} m, tilt {Figures.Short(upright.TiltDegrees)}°"
            : site.Light.Yard is { } yard
                ? $"{Figures.Count(yard.PolesPerSide, "pole", "poles")} on {(yard.BothSides ? "each long side" : "one long side")}, mounting height "
                    + $"{Figures.Number(yard.MountingHeightM, 2)} m, overhang {Figures.Number(yard.OverhangM, 2)} m, tilt {Figures.Short(yard.TiltDegrees)}°"
                : "";
        yield return new Paragraph(
            $"Site {site.Site.Id}, {site.Site.Name}, {Governing.Phrase(kit)}. Class {site.Site.Target.Name} ({site.Site.Target.Source}); {layout}; "
            + $"maintenance factor {Figures.Number(site.MaintenanceFactor, 2)}; {(site.Light.Yard is null ? "spacing" : "number of poles")} set by: {site.Light.GoverningLimit}.", TextStyle.Small)
        { KeepWithNext = true };
        if (site.Light.Area is { } outline)
        {
            yield return new Figure(AreaPicture.HeightPt(outline), (g, area) => AreaPicture.Draw(g, area, site.Light, outline),
                $"Maintained horizontal illuminance at site {site.Site.Id}, the area as drawn, north up; lx at the points of its grid.");
            yield break;
        }

        if (!LightField.CanDraw(site.Light.Result))
        {
            yield return new Paragraph($"No picture: the grid of {Figures.Number(site.Light.Result.PointsAlong, 0)} by "
                + $"{Figures.Number(site.Light.Result.PointsAcross, 0)} points cannot be drawn.");
            yield break;
        }

        var picture = new LightPicture(site.Light, site.Parts.Pole.ArmReachM);
        yield return new Figure(picture.HeightPt, picture.Draw, $"Maintained horizontal illuminance at site {site.Site.Id}, "
            + $"{(site.Light.Yard is null ? "one bay, near side at the foot" : "whole yard")}; linear between grid points, level beyond.");
    }

    private static IEnumerable<Block> Energy(SiteDesign site, Kit kit, KitCurve? curve)
    {
        yield return new Heading(3, $"Energy, kit {site.KitId}");
        yield return new Paragraph(
            $"Site {site.Site.Id}, {site.Site.Name}, {Governing.Phrase(kit)}. "
                + (site.Parts.Integrated is null
                    ? $"Modules tilted {Figures.Short(site.Climate.Plane.TiltDegrees)}° facing {Figures.Short(site.Climate.Plane.AzimuthDegrees)}° from north; "
                    : EnergyTables.Headings(site))
            + (site.Site.Horizon is { IsFlat: false } horizon ? $"beam and sky cut by the horizon {HorizonText.Of(horizon)} (azimuth:elevation, degrees); " : "")
            + $"lamp input {Figures.Number(site.Energy.LampInputW, 1)} W at the level used; "
                + $"irradiation taken at {Figures.Number(site.Climate.CautiousFactor, 2)} of its source for the grade of the climate ({Words.Of(site.Climate.Monthly.Grade)}). "
            + EnergyTables.Found(site, curve), TextStyle.Small)
        { KeepWithNext = true };
        yield return new Figure(EnergyPicture.HeightPt, (g, area) => EnergyPicture.Draw(g, area, site.Energy.Simulated, curve),
            $"Energy at site {site.Site.Id}: mean days of the months; the {Figures.Number(WorstSpell.DayCount, 0)} days with the most light missed, else the least charge"
            + (curve is { Points.Length: > 1 } ? "; smallest battery, to 2 %, that keeps the dark nights allowed with each array (square: offered)." : "."));
        yield return EnergyTables.Months(site);
    }

    private static IEnumerable<Block> Drawings(SiteDesign site, Kit kit)
    {
        var (load, block) = (site.Structure.Load, site.Structure.Foundation);
        yield return new Heading(3, $"Pole, foundation and connection, kit {kit.Id}");
        yield return new Paragraph(
            $"At site {site.Site.Id}: {StructureWords.Wind(site)}, "
                + $"peak pressure {Figures.Number(site.Structure.PeakPressureNPerM2, 0)} N/m², "
                + $"shear at the base {Figures.Number(load.BaseShearN, 0)} N, "
            + $"moment {Figures.Number(load.BaseMomentNm, 0)} Nm, head moves {Figures.Number(load.HeadDeflectionM * 1000, 0)} mm; "
                + $"soil {site.Site.Soil.Name}{(site.Site.SoilStated ? "" : " (not stated, worst class taken)")}; "
            + $"{(site.Structure.EmbedmentM is null ? "safety against overturning" : "depth over that needed")} {Figures.Number(block.OverturningSafetyFactor, 2)}, "
                + $"ground pressure {Figures.Number(block.GroundPressureKPa, 0)} kPa, concrete {Figures.Number(block.ConcreteM3, 2)} m³. "
            + StructureWords.Ground(site)
            + "Screening calculation: to be checked and signed by a licensed structural engineer under the local code.", TextStyle.Small)
        { KeepWithNext = true };
        var (elevation, connection) = (new PoleElevation(Elevation(site)), new ConnectionDiagram(kit.Parts));
        yield return new Figure(
            PoleElevation.HeightPt,
            (g, area) =>
            {
                elevation.Draw(g, new XRect(area.Left, area.Top, PoleElevation.WidthPt, area.Height));
                connection.Draw(g, new XRect(area.Right - ConnectionDiagram.WidthPt, area.Top, ConnectionDiagram.WidthPt, area.Height));
            },
            kit.Parts.Integrated is not null
                ? $"One pole of kit {kit.Id}: elevation to scale, the module on the head; the unit is sealed and nothing but the earth is connected on site. Work in the order of the "
                    + "table below (common practice, no source); where the instructions of the maker differ they prevail."
                : $"One pole of kit {kit.Id}: elevation to scale, arm and module drawn in one plane; connection, one line for both conductors. Connect in the order of "
                + "the numbers and part in the reverse order, modules covered, every fuse drawn until its circuit is finished (common practice, no source); where "
                + "the instructions of a maker differ they prevail.");
        yield return StructureWords.Order(kit);
    }

    private static ElevationFacts Elevation(SiteDesign site)
    {
        var p = site.Parts;
        var mounting = site.Light.Layout?.MountingHeightM ?? site.Light.Yard?.MountingHeightM ?? p.Pole.HeightM;
        var box = site.Structure.Load.Forces.FirstOrDefault(f => f.Name.Contains("enclosure", StringComparison.OrdinalIgnoreCase) || f.Name.Contains("box",
            StringComparison.OrdinalIgnoreCase));
        return new ElevationFacts(
            p.Pole.HeightM, p.Pole.BaseDiameterMm / 1000, p.Pole.TopDiameterMm / 1000, p.Pole.ArmReachM, p.Pole.ArmTiltDegrees, mounting,
            p.Module.LengthM, site.Climate.Plane.TiltDegrees, box?.HeightM ?? (p.Pole.HeightM / 2),
            new BlockFoundation(p.Foundation.LengthM, p.Foundation.WidthM, p.Foundation.DepthM), p.Foundation.AnchorBoltLengthMm / 1000)
        {
            IsIntegrated = p.Integrated is not null,
            BasePlateM = p.Pole.BasePlateMm / 1000,
            BoltSpacingM = (site.Structure.Bolts?.SpacingMm ?? 0) / 1000,
            BuriedM = p.Pole.DirectBuriedLengthM,
            Foot = p.Pole.DirectBuriedLengthM > 0
                ? $"shaft {Figures.Number(p.Pole.DirectBuriedLengthM, 2)} m into the ground"
                : $"plate {Figures.Short(p.Pole.BasePlateMm)} mm, {Figures.Number(p.Foundation.AnchorBoltCount, 0)} M{Figures.Short(p.Foundation.AnchorBoltMm)} × {Figures.Short(p.Foundation.AnchorBoltLengthMm)} mm",
            Door = p.Pole is { DoorWidthMm: > 0 and var wideMm, DoorBottomM: { } bottomM } ? (bottomM, (p.Pole.DoorHeightMm ?? 300) / 1000, wideMm / 1000) : null,
        };
    }
}
