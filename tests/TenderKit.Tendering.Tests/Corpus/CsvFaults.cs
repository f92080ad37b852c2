using System.Globalization;
using System.Text;
using static TenderKit.Tendering.Tests.Corpus.CorpusFile;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>Faults of delimited text, numbers and words.</summary>
internal static class CsvFaults
{
    private const string Head = "No,Name,Latitude,Longitude,Type,Length (m),Width (m)\n";

    static CsvFaults() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static IEnumerable<CorpusFile> Form()
    {
        yield return Csv("01-title-rows", "title, logo text and date above the header", "REPUBLIC OF KASOLA,,,,,,\n[logo],,,,,,\nStreet lighting of six sites,,,,,,\nDate: 2027-01-15,,,,,,\n,,,,,,\n" + PlainList.Csv);
        yield return Csv("02-semicolons", "semicolons with decimal commas", "No;Name;Latitude;Longitude;Type;Length (m);Width (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{Comma(s.Latitude)};{Comma(s.Longitude)};{s.Kind};{Comma(s.LengthM)};{Comma(s.WidthM)}"));
        yield return Csv("03-bom", "byte order mark of UTF-8", PlainList.Csv, mark: true, encoding: Encoding.UTF8);
        yield return Csv("04-utf16-tabs", "UTF-16 with tabs, as spreadsheet programs save Unicode text", PlainList.Csv.Replace(',', '\t'), mark: true, encoding: Encoding.Unicode);
        yield return Csv("05-windows-1252", "Windows code page 1252", "N\u00B0;Localit\u00E9;Latitude;Longitude;Type;Longueur (m);Largeur (m)\n1;\u00C9cole des filles;14,2508;-4,2512;all\u00E9e;250;3\n2;March\u00E9 central;14,2531;-4,2489;march\u00E9;80;40\n", false, Encoding.GetEncoding(1252));
        yield return Csv("06-dos-850", "DOS code page 850", "N;Localit\u00E9;Latitude;Longitude;Type;Longueur (m);Largeur (m)\n1;\u00C9cole des filles;14,2508;-4,2512;all\u00E9e;250;3\n2;March\u00E9 fran\u00E7ais;14,2531;-4,2489;march\u00E9;80;40\n", false, Encoding.GetEncoding(850));
        yield return Csv("07-sep-line", "a first line that names the separator, and rows of unequal length", "sep=;\nNo;Name;Latitude;Longitude;Type;Length (m);Width (m);;\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{s.Latitude};{s.Longitude};{s.Kind};{s.LengthM};{s.WidthM}") + ";;\n");
        yield return Csv("08-line-breaks-in-headings", "headings broken over two lines inside quotation marks", "\"Site\nNo\",Name,\"Latitude\n(decimal degrees)\",\"Longitude\n(decimal degrees)\",Type,\"Length\n(m)\",\"Width\n(m)\"\n" + PlainList.Rows);
        yield return Csv("09-blank-rows", "blank rows between the sites", PlainList.Csv.Replace("\n", "\n,,,,,,\n\n", StringComparison.Ordinal));
        yield return Csv("10-repeated-headings", "headings repeated on each printed page", Head + string.Join(Head, PlainList.Rows.Split('\n').Chunk(2).Select(c => string.Join('\n', c) + "\n")));
        yield return Csv("11-totals", "subtotals and a total that are right", Head + Split(2, "Sub-total Lot 1,,,,,430.5,\n") + "TOTAL,,,,,2146.5,\n");
        yield return Csv("12-wrong-total", "a total that does not agree with the rows", PlainList.Csv + ",Grand total,,,,2346.5,\n");
        yield return Csv("13-unnamed-total", "a total without a word", PlainList.Csv + ",,,,,2146.5,\n");
        yield return Csv("14-ditto", "ditto marks", Head + "S1,Market road,14.2508,-4.2512,road,250,6\nS2,North lane,14.2531,-4.2489,\"\"\"\",180.5,do.\nS3,South lane,14.2575,-4.2548,-do-,ditto,\u3003\nS4,East lane,14.2496,-4.2601,idem,60,''\n", false);
        yield return Csv("15-group-rows", "rows that name the district of the sites below", Head + "District: Upper Kasola,,,,,,\n" + Split(3, "District: Lower Kasola,,,,,,\n"));
        yield return Csv("16-remark-rows", "a remark among the rows", PlainList.Csv + "All lengths were measured with a wheel,,,,,,\n");
        yield return Csv("17-unit-row", "units in a row of their own", "No,Name,Latitude,Longitude,Type,Length,Width\n,,,,,km,cm\n" + PlainList.Lines(s => $"{s.Id},{s.Name},{s.Latitude},{s.Longitude},{s.Kind},{s.LengthM / 1000},{s.WidthM * 100}"));
        yield return Csv("18-row-without-id", "no column of numbers", "Name,Latitude,Longitude,Type,Length (m),Width (m)\nMarket road,14.2508,-4.2512,road,250,6\n", false);
    }

    public static IEnumerable<CorpusFile> Numbers()
    {
        yield return Csv("20-mark-per-column", "decimal comma in the lengths, decimal point in the positions", "No;Name;Latitude;Longitude;Type;Length (m);Width (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{s.Latitude};{s.Longitude};{s.Kind};{Comma(s.LengthM)};{Comma(s.WidthM)}"));
        yield return Csv("21-thousands-comma", "thousands marks", PlainList.Csv.Replace("1240", "\"1,240.0\"", StringComparison.Ordinal));
        yield return Csv("22-thousands-space", "thousands with a narrow space and decimal commas", "No;Name;Latitude;Longitude;Type;Length (m);Width (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{Comma(s.Latitude)};{Comma(s.Longitude)};{s.Kind};{s.LengthM.ToString("#,##0.0", CultureInfo.InvariantCulture).Replace(',', '\u202F').Replace('.', ',')};{Comma(s.WidthM)}"));
        yield return Csv("23-doubtful-thousands", "a comma that may be decimal or thousands, with nothing to tell", "No;Latitude;Longitude;Type;Length (m)\nS1;14.2508;-4.2512;road;12,500\n", false);
        yield return Csv("24-nos", "numbers with words: 2 nos, 12 poles, approx. 15", "No,Name,Latitude,Longitude,Type,Length (m),Width (m),No. of poles\nS1,Market road,14.2508,-4.2512,road,250,6,12 poles\nS2,School path,14.2531,-4.2489,path,30,3,2 nos\nS3,Clinic street,14.2575,-4.2548,road,approx. 340,7,approx. 15\n", false);
        yield return Csv("25-ranges", "ranges: 5-6 m wide, lamps 5 to 6 m high", "No,Name,Latitude,Longitude,Type,Length (m),Width,Mounting height\nS1,Market road,14.2508,-4.2512,road,250,5-6 m,5 to 6\n", false);
        yield return Csv("26-feet", "feet and inches", "No,Name,Latitude,Longitude,Type,Length,Width\nS1,Market road,14.2508,-4.2512,road,820 ft,\"19'8\"\"\"\nS2,School path,14.2531,-4.2489,path,0.5 mi,9 ft 10 in\n", false);
        yield return Csv("27-wind-units", "wind in km/h, mph, knots and m/s", "No,Latitude,Longitude,Type,Length (m),Wind speed\nS1,14.2508,-4.2512,road,250,120 km/h\nS2,14.2531,-4.2489,path,180,75 mph\nS3,14.2575,-4.2548,road,340,65 kt\nS4,14.2496,-4.2601,road,60,33 m/s\n", false);
        yield return Csv("28-unit-in-cell", "units in the cells instead of the headings", "No,Name,Latitude,Longitude,Type,Length,Width\n" + PlainList.Lines(s => $"{s.Id},{s.Name},{s.Latitude},{s.Longitude},{s.Kind},{s.LengthM} mtrs,{s.WidthM}m"));
        yield return Csv("29-apostrophes", "apostrophes that mark numbers as text", Head + PlainList.Lines(s => $"{s.Id},{s.Name},'{s.Latitude},'{s.Longitude},{s.Kind},'{s.LengthM},'{s.WidthM}"));
    }

    public static IEnumerable<CorpusFile> Headings()
    {
        yield return Csv("30-french", "headings in French", "N\u00B0 du site;Nom du site;Latitude;Longitude;Type de site;Longueur (m);Largeur de la chauss\u00E9e (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{Comma(s.Latitude)};{Comma(s.Longitude)};{French(s.Kind)};{Comma(s.LengthM)};{Comma(s.WidthM)}"));
        yield return Csv("31-spanish", "headings in Spanish, where longitud is length and longitude", "C\u00F3digo;Nombre;Latitud;Longitud;Tipo;Longitud (m);Ancho (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{Comma(s.Latitude)};{Comma(s.Longitude)};{Spanish(s.Kind)};{Comma(s.LengthM)};{Comma(s.WidthM)}"));
        yield return Csv("32-portuguese", "headings in Portuguese", "N\u00BA;Nome do local;Latitude;Longitude;Tipo de local;Extens\u00E3o (m);Largura da via (m)\n" + PlainList.Lines(s => $"{s.Id};{s.Name};{Comma(s.Latitude)};{Comma(s.Longitude)};{Portuguese(s.Kind)};{Comma(s.LengthM)};{Comma(s.WidthM)}"));
        yield return Csv("33-misspelt", "misspelt headings", "Site Nr,Nmae of site,Lattitude,Longtitude,Tpye of site,Lenght (m),Widht (m)\n" + PlainList.Rows);
        yield return Csv("34-long-headings", "long headings", "S/No.,Name of the site / location,GPS Latitude (N),GPS Longitude (decimal degrees),Category of site,Proposed length of the road section (m),Approx. carriageway width (m)\n" + PlainList.Rows);
        yield return Csv("35-survey-columns", "a survey form's export: groups before the names, four columns of position", "start,site/id,site/name,site/kind,site/road_length_m,site/road_width_m,_gps_latitude,_gps_longitude,_gps_altitude,_gps_precision\n" + PlainList.Lines(s => $"2027-01-10T08:15:00,{s.Id},{s.Name},{s.Kind},{s.LengthM},{s.WidthM},{s.Latitude},{s.Longitude},271.4,4.2"));
        yield return Csv("36-survey-geopoint", "a survey form's export: one cell of position", "id,name,kind,length_m,width_m,gps_location\n" + PlainList.Lines(s => $"{s.Id},{s.Name},{s.Kind},{s.LengthM},{s.WidthM},{s.Latitude} {s.Longitude} 271.4 4.2"));
    }

    internal static string Comma(double value) => value.ToString(CultureInfo.InvariantCulture).Replace('.', ',');

    private static string French(string kind) => kind switch { "road" => "rue", "path" => "sentier", _ => "gare" };

    private static string Spanish(string kind) => kind switch { "road" => "calle", "path" => "sendero", _ => "patio" };

    private static string Portuguese(string kind) => kind switch { "road" => "rua", "path" => "caminho", _ => "p\u00E1tio" };

    private static string Split(int after, string row)
    {
        var lines = PlainList.Rows.Split('\n');
        return string.Join('\n', lines[..after]) + "\n" + row + string.Join('\n', lines[after..]);
    }
}
