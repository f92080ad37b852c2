using TenderKit.Tendering.Notes;
using Xunit;

namespace TenderKit.Tendering.Tests.Notes;

/// <summary>The notes name every standard that the trade's list of standards for such works holds, each under a fact that calls it up.</summary>
public class NoteCoverageTests
{
    private static readonly NoteLibrary _library = NoteLibrary.Load();

    /// <summary>Rows of the list: what they govern, the standards, and the facts one of which must call them up. Numbers as best known; the reader checks the edition.</summary>
    public static TheoryData<string, string, string> Rows => new()
    {
        { "photovoltaic supply installations", "IEC 60364-7-712", "AnyPole" },
        { "external lighting installations", "IEC 60364-7-714", "AnyPole" },
        { "shock, lightning", "IEC 60364-4-41; IEC 62305; IEC 62561", "ArrayUpToSixtyVolts MetalPole" },
        { "arrays, modules, connectors, cable", "IEC 62548-1; IEC 61215; IEC 61730; IEC 62852; EN 50618; IEC 62930", "AnyPole SeparateParts ParallelStrings" },
        { "countries on that code", "NFPA 70; 690; 410; 480; 706; 250", "AnyPole" },
        { "luminaires", "IEC 60598-1; IEC 60598-2-3; IEC 60529; IEC 62262; IEC 62722-2-1", "AnyPole" },
        { "stand-alone systems", "IEC 62124; IEC 62509; IEC TS 62257", "AnyPole" },
        { "lithium: safety and transport", "IEC 62619; IEC 62620; IEC 63056; 38.3; UN 3480; UN 3481; IMDG; ADR; IATA", "LithiumBattery" },
        { "lead-acid", "IEC 62485-2; IEC 60896-21; IEC 60896-22; IEC 61427-1", "LeadAcidBattery" },
        { "end of life", "2023/1542; 2012/19/EU; Basel; local law", "AnyPole" },
        { "height, lifting, platforms", "ILO C167; ISO 45001; ISO 12480-1; EN 280", "WorkAboveTwoMetres HeavyLift" },
        { "excavation and buried services", "local rules on excavation and buried services", "Excavation" },
        { "traffic", "road works and traffic control", "RoadTraffic" },
        { "passive safety", "EN 12767", "RoadTraffic" },
        { "steel poles", "EN 40; ISO 1461; ISO 14713; EN 1090", "AnyPole MetalPole" },
        { "obtrusive light", "CIE 150; CIE 126; IES TM-15", "AnyPole" },
        { "electromagnetic compatibility, surge", "CISPR 15; IEC 61547; IEC 61000-4-5", "AnyPole" },
        { "photobiological safety", "IEC 62471; IEC TR 62778", "AnyPole" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Each_row_is_covered(string governs, string standards, string facts)
    {
        var called = facts.Split(' ').Select(Enum.Parse<NoteFact>).ToHashSet();
        foreach (var standard in standards.Split("; "))
        {
            var naming = _library.Rules.Where(r => r.Standard.Contains(standard, StringComparison.OrdinalIgnoreCase)).ToList();
            Assert.True(naming.Count > 0, $"{governs}: no note names {standard}");
            Assert.True(naming.Any(r => r.When.Any(called.Contains)), $"{governs}: {standard} stands only under {string.Join(", ", naming.SelectMany(r => r.When).Distinct())}");
        }
    }

    [Fact]
    public void Every_note_defers_to_local_code_and_names_who_answers() => Assert.All(_library.Rules, r => Assert.True(r.Role.Length > 3 && r.Action.Length > 20, r.Id));
}
