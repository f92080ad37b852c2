using TenderKit.Tendering.Items;
using Xunit;

namespace TenderKit.Tendering.Tests.Items;

public class ItemWordsTests
{
    [Theory]
    [InlineData("LED street light 30W IP66 5100 lm 4000K", ItemKind.Luminaire)]
    [InlineData("Panel solar 80Wp mono 780x670x30", ItemKind.Module)]
    [InlineData("Batterie LiFePO4 12,8V 60Ah 5 ans", ItemKind.Battery)]
    [InlineData("Contrôleur de charge MPPT 10 A", ItemKind.Controller)]
    [InlineData("Poste metálico galvanizado 6 m", ItemKind.Pole)]
    [InlineData("Coffret pour batterie et régulateur, IP55", ItemKind.Enclosure)]
    [InlineData("Battery and controller enclosure", ItemKind.Enclosure)]
    [InlineData("Pole-mounted aluminium box for battery and controller", ItemKind.Enclosure)]
    [InlineData("Soporte para panel solar, galvanizado", ItemKind.Bracket)]
    [InlineData("Luminaria integrada todo en uno 60W, panel 80W", ItemKind.Integrated)]
    [InlineData("Fornecimento de módulo fotovoltaico 100 Wp", ItemKind.Module)]
    [InlineData("Cabo solar 2 x 4 mm2", ItemKind.Cable)]
    [InlineData("Massif de fondation en béton, tiges d'ancrage comprises", ItemKind.Foundation)]
    [InlineData("Fouille en terrain de toute nature", ItemKind.Excavation)]
    [InlineData("Essais et mise en service", ItemKind.Commission)]
    [InlineData("Capacitación de operadores", ItemKind.Training)]
    [InlineData("Solar street light complete with pole", ItemKind.CompleteLight)]
    [InlineData("Total carried to summary", ItemKind.Total)]
    [InlineData("Somme provisionnelle pour déplacement de réseaux", ItemKind.ProvisionalSum)]
    [InlineData("TVA 18 %", ItemKind.Tax)]
    [InlineData("One inspection vehicle", ItemKind.Unknown)]
    [InlineData("", ItemKind.Unknown)]
    public void Words_of_four_languages_tell_what_a_line_is(string text, ItemKind kind) => Assert.Equal(kind, ItemWords.Read(text).Kind);

    [Theory]
    [InlineData("Spare battery LiFePO4", true)]
    [InlineData("Repuestos: controlador de carga", true)]
    [InlineData("Battery LiFePO4", false)]
    public void Spares_are_told_apart(string text, bool spare) => Assert.Equal(spare, ItemWords.Read(text).Spare);

    [Fact]
    public void The_score_says_how_clear_it_was() => Assert.True(ItemWords.Read("Solar charge controller 10 A").Score > ItemWords.Read("Panel and battery").Score);
}
