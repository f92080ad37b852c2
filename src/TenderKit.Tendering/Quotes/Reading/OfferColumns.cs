using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>What the columns of one block of an offer mean, by 0-based column.</summary>
internal sealed record OfferColumns(ImmutableSortedDictionary<int, string> Meanings, int HeaderIndex)
{
    private const int LeastKnown = 3;

    private static readonly ImmutableArray<ColumnMeaning> Known =
    [
        ColumnMeaning.Of("number", null, "no|nr|n|n°|#|item no|item number|line|pos|position|ref|reference|numero|num|rang|poste|renglon|renglon no|partida|item n|code|codigo|ordem|ord|linea|ligne|linha|s no|sl no"),
        ColumnMeaning.Of("item", null, "item|article|articulo|artigo|goods|bien|bem|item offered"),
        ColumnMeaning.Of("description", null, "description|designation|descripcion|descricao|detalle|detalhe|description of goods|descripcion del bien|descricao do bem|description des articles|libelle|concepto|conceito|designacion|designacao|product|produit|producto|produto|offered|offre|ofertado|denomination|denominacion|denominacao|especificacion|particulars|particulars offered|description of item|prestation|nature|material|materiais|materiel|bienes|discriminacao|item description|fourniture|fournitures|ouvrage|ouvrages|objet|suministro|suministros|objeto|fornecimento|fornecimentos|supply|scope|scope of supply|goods offered|equipment|equipement|equipements|equipo|equipos|equipamento|equipamentos|services"),
        ColumnMeaning.Of("technical", null, "technical data|technical data offered|specification|specifications|technical specification|caracteristiques|caracteristiques techniques|caracteristicas|caracteristicas tecnicas|datos tecnicos|dados tecnicos|donnees techniques|specifications techniques|especificaciones|especificaciones tecnicas|especificacoes|details|fiche technique|ficha tecnica|rating|ratings|type|model|modele|modelo|tipo|reference technique|caracteristicas ofrecidas|caracteristiques offertes"),
        ColumnMeaning.Of("unit", null, "unit|u|un|und|unid|unidad|unite|unidade|uom|units|ud|u m|um|unid medida|unidad de medida|unite de mesure|unidade de medida|mesure"),
        ColumnMeaning.Of("quantity", null, "quantity|qty|qte|quantite|cantidad|cant|quantidade|quant|qt|qtd|qtde|q ty|nos|number of units|poles|nombre|qnt|quantites|cantidades|quantidades|postes|q"),
        ColumnMeaning.Of("rate", null, "unit price|rate|unit rate|price each|price|p u|pu|p unit|precio unitario|precio|precio unit|p unitario|prix unitaire|prix|prix unit|preco unitario|preco|preco unit|valor unitario|unit price usd|usd unit|unit usd|p u ht|pu ht|prix unitaire ht|precio u|v unitario|vr unitario|valor unit|cost each|unit cost|costo unitario|custo unitario|each"),
        ColumnMeaning.Of("amount", null, "amount|extended|extended price|extended amount|total|total price|line total|extension|importe|monto|precio total|prix total|montant|montant ht|preco total|valor|valor total|usd total|p total|importe total|subtotal|sous total|total usd|total ht|value|sum|v total|prix total ht|montant total|total line|somme|costo total|custo total"),
        ColumnMeaning.Of("remark", null, "remark|remarks|note|notes|observaciones|observacion|observations|observacoes|obs|comment|comments|commentaire|commentaires|remarques|remarque|comentarios|nota|notas|observacao"),
        ColumnMeaning.Of("currency", null, "currency|cur|moneda|devise|moeda|monnaie|ccy"),
        ColumnMeaning.Of("lot", null, "lot|lote|lots|lotes"),
        ColumnMeaning.Of("site", null, "site|sitio|site id|sites|local|lugar|ubicacion"),
        ColumnMeaning.Of("place", null, "place|name of site|location|localite|localidad|localidade|village|lieu|nombre del sitio|nom du site|nome do local"),
        ColumnMeaning.Of("kit", null, "kit|type of kit|kit type|tipo de kit|type de kit"),
        ColumnMeaning.Of("warranty", null, "warranty|garantie|garantia|guarantee|warranty years|warranty period|duree de garantie|plazo de garantia|prazo de garantia"),
        ColumnMeaning.Of("certificate", null, "certificate|certificates|certification|certificacion|certificacao|certificats|certificat|certificado|certificados|standard|standards|norme|normes|norma|normas|standard certificate|conformity"),
    ];

    /// <summary>The columns when a row is a row of headings, else null.</summary>
    public static OfferColumns? Of(ImmutableArray<Cell> row, int index)
    {
        var meanings = ImmutableSortedDictionary.CreateBuilder<int, string>();
        for (var c = 0; c < row.Length; c++)
        {
            var cell = row[c];
            if (cell.IsEmpty || cell.Number is not null || cell.Text.Length > 45) continue;
            if (Meaning(cell.Text) is not { } meaning || (meanings.ContainsValue(meaning) && meaning is not ("description" or "technical"))) continue;
            meanings[c] = meaning;
        }

        var known = meanings.Values.ToImmutableHashSet();
        var priced = known.Contains("rate") || known.Contains("amount");
        if (meanings.Count >= LeastKnown && priced && (known.Contains("description") || known.Contains("item") || known.Contains("technical") || known.Contains("kit"))) return new(meanings.ToImmutable(), index);
        return meanings.Count >= 2 && known.Contains("amount") && (known.Contains("lot") || known.Contains("description") || known.Contains("item")) && row.Count(c => !c.IsEmpty) <= 3 ? new(meanings.ToImmutable(), index) : null;
    }

    /// <summary>A heading whose column holds descriptions is one, whatever it says: "Item" is a number over 1, 2, 3.</summary>
    public OfferColumns Settled(IReadOnlyList<ImmutableArray<Cell>> below)
    {
        var settled = Meanings.ToBuilder();
        foreach (var (column, meaning) in Meanings)
        {
            if (meaning is not ("item" or "number" or "kit")) continue;
            var texts = below.Select(r => column < r.Length ? r[column].Text : "").Where(t => t.Length > 0).Take(12).ToList();
            var wordy = texts.Count(t => t.Count(char.IsLetter) >= 4 && t.Length > 5);
            settled[column] = texts.Count > 0 && wordy * 2 >= texts.Count ? "description" : "number";
        }

        // a column called "No." without any other for quantities holds them when it does not count the rows
        if (!settled.ContainsValue("quantity"))
        {
            foreach (var (column, _) in settled.Where(m => m.Value == "number").ToList())
            {
                var numbers = below.Select(r => column < r.Length ? r[column].Number ?? (double.TryParse(r[column].Text, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : null) : null).OfType<double>().ToList();
                if (numbers.Count < 2 || numbers.Zip(numbers.Skip(1)).Count(p => p.Second == p.First + 1) * 2 >= numbers.Count) continue;
                settled[column] = "quantity";
                break;
            }
        }

        return this with { Meanings = settled.ToImmutable() };
    }

    public string? TextOf(ImmutableArray<Cell> row, string meaning) =>
        Meanings.Where(m => m.Value == meaning && m.Key < row.Length).Select(m => row[m.Key].Text).FirstOrDefault();

    public Cell? CellOf(ImmutableArray<Cell> row, string meaning)
    {
        foreach (var (column, value) in Meanings)
        {
            if (value == meaning && column < row.Length) return row[column];
        }

        return null;
    }

    private static string? Meaning(string heading)
    {
        var plain = heading.ReplaceLineEndings(" ").Replace("'", " ", StringComparison.Ordinal).Replace("’", " ", StringComparison.Ordinal);
        var words = HeadingMatch.Words(plain);
        foreach (var currency in Currencies) words = (" " + words + " ").Replace($" {currency} ", " ", StringComparison.Ordinal).Trim();
        if (words.Length == 0) return heading.Contains('#', StringComparison.Ordinal) || heading.Contains('°', StringComparison.Ordinal) ? "number" : null;
        return HeadingMatch.Fits(words, Known) is [var best, ..] ? best.Meaning.Id : null;
    }

    private static readonly ImmutableArray<string> Currencies = ["usd", "eur", "xof", "xaf", "fcfa", "cfa", "us", "gbp", "kes", "mzn", "tzs", "en", "in", "em", "excl vat", "ht", "hors taxes", "sin iva", "sem iva"];
}
