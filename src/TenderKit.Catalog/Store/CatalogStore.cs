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
        using var fill = BeginReplace();
        foreach (var (file, bytes) in photometry) fill.Add(file, bytes);
        foreach (var part in parts) fill.Add(part);
        fill.Commit();
    }

    internal CatalogFill BeginReplace() => new(connection);

    /// <summary>Number of parts.</summary>
    public int Count() => connection.ExecuteScalar<int>("SELECT count(*) FROM parts");

    /// <summary>The part of a code, whatever its family, or null.</summary>
    public Part? Find(string code)
    {
        var name = connection.QueryFirstOrDefault<string>("SELECT family FROM parts WHERE code = @code", new { code });
        return name is null ? null : Read(PartFamily.All.First(f => f.Name == name), "WHERE code = @p0", [code]).Single();
    }

    /// <summary>The parts that answer a question, sorted by code.</summary>
    public ImmutableArray<T> Find<T>(PartQuery<T> query)
        where T : Part => Sorted<T>(Read(PartFamily.Of<T>(), query.Where, [.. query.Terms.Select(t => t.Value)]));

    /// <summary>How the store would answer a question: one line per table it goes through or index it searches.</summary>
    public ImmutableArray<string> Plan<T>(PartQuery<T> query)
        where T : Part
    {
        using var command = Command("EXPLAIN QUERY PLAN " + Schema.Select(PartFamily.Of<T>()) + " " + query.Where, [.. query.Terms.Select(t => t.Value)]);
        using var reader = command.ExecuteReader();
        var lines = ImmutableArray.CreateBuilder<string>();
        while (reader.Read()) lines.Add(reader.GetString(3));
        return lines.ToImmutable();
    }

    /// <summary>All parts, each family sorted by code.</summary>
    public PartsCatalog Load() => new(
        Family<Luminaire>(), Family<Module>(), Family<Battery>(), Family<Controller>(), Family<Pole>(), Family<FoundationSet>(),
        Family<Cable>(), Family<ProtectionDevice>(), Family<Enclosure>(), Family<Bracket>(), Family<ServiceRate>())
    {
        Fixings = Family<Fixing>(),
        IntegratedUnits = Family<IntegratedUnit>(),
    };

    /// <summary>Photometric files by name.</summary>
    public ImmutableSortedDictionary<string, byte[]> Photometry() =>
        connection.Query<(string File, byte[] Bytes)>("SELECT file, bytes FROM photometry")
            .ToImmutableSortedDictionary(r => r.File, r => r.Bytes, StringComparer.Ordinal);

    /// <summary>SHA-256 over the canonical text of all parts and photometric files, lower-case hex; equal for equal catalogues, whatever files they came from.</summary>
    public string Digest()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var text = new StringBuilder();
        foreach (var family in PartFamily.All)
        {
            foreach (var part in Read(family, "ORDER BY code", []))
            {
                text.Append(family.Name);
                foreach (var column in family.Columns) text.Append('\u001F').Append(column.Name).Append('=').Append(column.Text(column.Of(part)));
                Take('\n');
            }
        }

        foreach (var (file, bytes) in Photometry())
        {
            text.Append(file).Append('\u001F').Append(Convert.ToHexStringLower(SHA256.HashData(bytes)));
            Take('\n');
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());

        void Take(char end)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(text.Append(end).ToString()));
            text.Clear();
        }
    }

    /// <summary>
    /// Writes the store as a .db file: beside the target first and down to the disk, then renamed, so that the target is always whole,
    /// old or new. Each process writes beside under a name of its own; what a killed one left is cleared away.
    /// </summary>
    public void SaveAs(string path)
    {
        var beside = BesideFile.Of(path);
        BesideFile.ClearLeft(path);
        try
        {
            connection.Execute("VACUUM INTO @beside", new { beside });
            using (var written = new FileStream(beside, FileMode.Open, FileAccess.ReadWrite)) written.Flush(flushToDisk: true);
            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>Writes one csv file per family and the photometric files; importing the folder gives an equal catalogue.</summary>
    public void Export(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var family in PartFamily.All)
        {
            using var rows = connection.ExecuteReader(Schema.SelectForExport(family));
            using var text = new StreamWriter(Path.Combine(folder, family.Name + ".csv"), append: false, new UTF8Encoding(false));
            using var csv = CsvDataWriter.Create(text, new CsvDataWriterOptions { NewLine = "\n" });
            csv.Write((System.Data.Common.DbDataReader)rows);
        }

        ExportPhotometry(folder);
    }

    /// <summary>Writes the photometric files into the folder of that name.</summary>
    public void ExportPhotometry(string folder)
    {
        var photometryFolder = Path.Combine(folder, CatalogImporter.PhotometryFolder);
        Directory.CreateDirectory(photometryFolder);
        foreach (var (file, bytes) in Photometry())
        {
            if (Path.GetFileName(file) != file) throw new InvalidDataException($"the catalogue names a photometric file '{file}' outside its folder; import it again from its csv files");
            File.WriteAllBytes(Path.Combine(photometryFolder, file), bytes);
        }
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
            if (Schema.Own(family).FirstOrDefault(c => !known.Contains(c.Name)) is { } missing)
                return $"the catalogue file was written by another version: {family.Name} lacks '{missing.Name}'; import it again from its csv files";
        }

        return null;
    }

    private ImmutableArray<T> Family<T>()
        where T : Part => Sorted<T>(Read(PartFamily.Of<T>(), "", []));

    private static ImmutableArray<T> Sorted<T>(IEnumerable<Part> parts)
        where T : Part => [.. parts.Cast<T>().OrderBy(p => p.Code, StringComparer.Ordinal)];

    private IEnumerable<Part> Read(PartFamily family, string rest, object?[] values)
    {
        using var command = Command(Schema.Select(family) + " " + rest, values);
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            var part = family.NewPart();
            for (var i = 0; i < family.Columns.Length; i++) family.Columns[i].Set(part, family.Columns[i].FromSql(reader.GetValue(i)));
            yield return part;
        }
    }

    private SqliteCommand Command(string sql, object?[] values)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < values.Length; i++) command.Parameters.AddWithValue(FormattableString.Invariant($"@p{i}"), values[i] ?? DBNull.Value);
        return command;
    }
}
