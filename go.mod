module rootbell

go 1.26
