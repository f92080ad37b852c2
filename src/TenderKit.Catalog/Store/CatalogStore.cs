using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Sylvan.Data.Csv;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Sizing.Basics;

namespace TenderKit.Catalog.Store;

/// <summary>
/// The parts catalogue in SQLite, photometric files included, so that one .db file is the whole catalogue. Files are
/// opened for reading only and written whole, which needs no write-ahead log beside them.
/// </summary>
public sealed class CatalogStore : IDisposable
{
    private readonly SqliteConnection connection;

    private CatalogStore(SqliteConnection connection) => this.connection = connection;

    /// <summary>An empty store in memory.</summary>
    public static CatalogStore InMemory()
    {
        var connection = Connect(":memory:", SqliteOpenMode.ReadWriteCreate);
        connection.Execute(Schema.Create);
        return new(connection);
    }

    /// <summary>Opens a .db file for reading.</summary>
    public static Outcome<CatalogStore> Open(string path)
    {
        var place = new Place(Path.GetFileName(path));
        if (!File.Exists(path))
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK601", "the catalogue file does not exist; check the path", place));
        SqliteConnection? connection = null;
        try
        {
            connection = Connect(path, SqliteOpenMode.ReadOnly);
            if (Problem(connection) is not { } problem) return Outcome.Of(new CatalogStore(connection));
            connection.Dispose();
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK610", problem, place));
        }
        catch (SqliteException e)
        {
            connection?.Dispose();
            return Outcome.None<CatalogStore>(Diagnostic.Error("TK610",
                $"the catalogue file cannot be read ({e.Message.TrimEnd('.')}); import it again from its csv files", place));
        }
    }

    /// <summary>Puts these parts and photometric files in place of all there are, or leaves everything as it was.</summary>
    /// <exception cref="SqliteException">A code stands twice or a photometric file is missing.</exception>
    public void Replace(IEnumerable<Part> parts, ImmutableSortedDictionary<string, byte[]> photometry)
    {
        using var transaction = connection.BeginTransaction();
        foreach (var family in PartFamily.All) connection.Execute($"DELETE FROM {family.Name}", transaction: transaction);
        connection.Execute("DELETE FROM parts; DELETE FROM photometry", transaction: transaction);
        foreach (var (file, bytes) in photometry)
            connection.Execute("INSERT INTO photometry (file, bytes) VALUES (@file, @bytes)", new { file, bytes }, transaction);
        foreach (var part in parts)
        {
            var family = PartFamily.Of(part);
            connection.Execute("INSERT INTO parts (code, family) VALUES (@Code, @Name)", new { part.Code, family.Name }, transaction);
            connection.Execute(Schema.Insert(family), Parameters(family, part), transaction);
        }

        transaction.Commit();
    }

    /// <summary>All parts, each family sorted by code.</summary>
    public PartsCatalog Load() => new(
        Family<Luminaire>(), Family<Module>(), Family<Battery>(), Family<Controller>(), Family<Pole>(), Family<FoundationSet>(),
        Family<Cable>(), Family<ProtectionDevice>(), Family<Enclosure>(), Family<Bracket>(), Family<ServiceRate>())
    {
        IntegratedUnits = Family<IntegratedUnit>(),
    };

    /// <summary>Photometric files by name.</summary>
    public ImmutableSortedDictionary<string, byte[]> Photometry() =>
        connection.Query<(string File, byte[] Bytes)>("SELECT file, bytes FROM photometry")
            .ToImmutableSortedDictionary(r => r.File, r => r.Bytes, StringComparer.Ordinal);

    /// <summary>SHA-256 over the canonical text of all parts and photometric files, lower-case hex; equal for equal catalogues, whatever files they came from.</summary>
    public string Digest()
    {
        var text = new StringBuilder();
        foreach (var part in Load().All)
        {
            var family = PartFamily.Of(part);
            text.Append(family.Name);
            foreach (var column in family.Columns) text.Append('\u001F').Append(column.Name).Append('=').Append(column.Text(column.Of(part)));
            text.Append('\n');
        }

        foreach (var (file, bytes) in Photometry())
            text.Append(file).Append('\u001F').Append(Convert.ToHexStringLower(SHA256.HashData(bytes))).Append('\n');
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    /// <summary>Writes the store as a .db file: beside the target first, then renamed, so that the target is always whole.</summary>
    public void SaveAs(string path)
    {
        var beside = path + ".new";
        File.Delete(beside);
        connection.Execute("VACUUM INTO @beside", new { beside });
        File.Move(beside, path, overwrite: true);
    }

    /// <summary>Writes one csv file per family and the photometric files; importing the folder gives an equal catalogue.</summary>
    public void Export(string folder)
    {
        var photometryFolder = Path.Combine(folder, CatalogImporter.PhotometryFolder);
        Directory.CreateDirectory(photometryFolder);
        foreach (var family in PartFamily.All)
        {
            using var rows = connection.ExecuteReader(Schema.SelectForExport(family));
            using var text = new StreamWriter(Path.Combine(folder, family.Name + ".csv"), append: false, new UTF8Encoding(false));
            using var csv = CsvDataWriter.Create(text, new CsvDataWriterOptions { NewLine = "\n" });
            csv.Write((System.Data.Common.DbDataReader)rows);
        }

        foreach (var (file, bytes) in Photometry()) File.WriteAllBytes(Path.Combine(photometryFolder, file), bytes);
    }

    public void Dispose() => connection.Dispose();

    private static SqliteConnection Connect(string path, SqliteOpenMode mode)
    {
        var text = new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, ForeignKeys = true, Pooling = false };
        var connection = new SqliteConnection(text.ToString());
        connection.Open();
        return connection;
    }

    private static string? Problem(SqliteConnection connection)
    {
        if (connection.ExecuteScalar<int>("PRAGMA application_id") != Schema.ApplicationId)
            return "the file is no parts catalogue; import one from csv files";
        if (connection.ExecuteScalar<string>("PRAGMA quick_check") is var check && check != "ok")
            return $"the catalogue file is damaged ({check}); import it again from its csv files";
        foreach (var family in PartFamily.All)
        {
            var known = connection.Query<string>("SELECT name FROM pragma_table_info(@Name)", new { family.Name }).ToHashSet(StringComparer.Ordinal);
            if (family.Columns.FirstOrDefault(c => !known.Contains(c.Name)) is { } missing)
                return $"the catalogue file was written by another version: {family.Name} lacks '{missing.Name}'; import it again from its csv files";
        }

        return null;
    }

    private static DynamicParameters Parameters(PartFamily family, Part part)
    {
        var parameters = new DynamicParameters();
        foreach (var column in family.Columns) parameters.Add(column.Name, column.ToSql(column.Of(part)));
        return parameters;
    }

    private ImmutableArray<T> Family<T>()
        where T : Part
    {
        var family = PartFamily.All.First(f => f.PartType == typeof(T));
        var rows = connection.Query($"SELECT * FROM {family.Name}").Cast<IDictionary<string, object?>>();
        return [.. rows.Select(r => (T)Part(family, r)).OrderBy(p => p.Code, StringComparer.Ordinal)];
    }

    private static Part Part(PartFamily family, IDictionary<string, object?> row)
    {
        var part = family.NewPart();
        foreach (var column in family.Columns) column.Set(part, column.FromSql(row[column.Name]));
        return part;
    }
}
