using System.Globalization;
using System.Text;

namespace TenderKit.Catalog.Tests;

/// <summary>A temporary catalogue of as many parts as asked for, spread over modules, batteries and poles; the same every time.</summary>
internal sealed class LargeCatalog : IDisposable
{
    private const string Common = "code,description,unit_price,currency,price_valid_until,lead_time_days,warranty_years,weight_kg,customs_code,certificates,price_breaks";

    public LargeCatalog(int parts)
    {
        Folder = Path.Combine(Path.GetTempPath(), "catalog-" + Guid.NewGuid().ToString("N"));
        Directory.CreateDirectory(Folder);
        var third = parts / 3;
        Write("modules", "rated_wp,open_circuit_v,short_circuit_a,maximum_power_v,maximum_power_a,power_coefficient_per_k,voltage_coefficient_per_k,noct_c,length_m,width_m,max_series_fuse_a", third, Module);
        Write("batteries", "chemistry,nominal_voltage_v,rated_ah,rated_hours,peukert_exponent,max_depth_fraction,cycles_at_depth,cycle_depth_fraction,calendar_years_at_25_c,charge_efficiency,discharge_efficiency,self_discharge_per_month_fraction,least_charge_c,max_operating_c,max_charge_a", third, Battery);
        Write("poles", "height_m,base_diameter_mm,top_diameter_mm,wall_mm,yield_mpa,arm_reach_m,arm_tilt_degrees,base_plate_mm,zinc_um", parts - (2 * third), Pole);
    }

    public string Folder { get; }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string Module(int i)
    {
        var wp = 20 + (i % 500);
        return string.Create(CultureInfo.InvariantCulture,
            $"{Head("M", i, wp * 0.4m, wp * 0.06)},{wp},22.2,{wp / 17.4:0.00},18.4,{wp / 18.4:0.000},-0.0037,-0.0029,45,{0.4 + (wp * 0.002):0.000},{wp / 200.0 / (0.4 + (wp * 0.002)):0.000},15");
    }

    private static string Battery(int i)
    {
        var ah = 10 + (i % 290);
        return string.Create(CultureInfo.InvariantCulture,
            $"{Head("B", i, ah * 3.1m, ah * 0.25)},LithiumIronPhosphate,{(i % 2 == 0 ? "12.8" : "25.6")},{ah},5,1.05,0.9,3500,0.8,12,0.97,0.98,0.02,0,60,{ah / 2.0}");
    }

    private static string Pole(int i) => string.Create(CultureInfo.InvariantCulture,
        $"{Head("P", i, 60 + (i % 300), 40)},{3 + (i % 90 * 0.1):0.0},{100 + (i % 100)},60,{3 + (i % 3)},235,0.5,5,300,75");

    private static string Head(string family, int i, decimal price, double weightKg) => string.Create(CultureInfo.InvariantCulture,
        $"{family}-{i:000000},\"Invented part {i}, of no maker\",{price:0.00},USD,2027-06-30,{20 + (i % 40)},5,{weightKg:0.00},7308.90,IEC 61215;IEC 61730,50:{price * 0.97m:0.00};200:{price * 0.94m:0.00}");

    private void Write(string family, string columns, int rows, Func<int, string> row)
    {
        using var text = new StreamWriter(Path.Combine(Folder, family + ".csv"), append: false, new UTF8Encoding(false));
        text.WriteLine(Common + "," + columns);
        for (var i = 0; i < rows; i++) text.WriteLine(row(i));
    }
}
